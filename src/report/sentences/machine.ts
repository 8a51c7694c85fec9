import { counted, minutesText } from '../text/numbers.js';
import { plain } from '../text/phrase.js';
import { factOf, timesText, type Family } from './family.js';

/** The heater and what switches it. */
export const heater: Family = {
  id: 'heater',
  has: (id) => /(heater|heat-up|heating|cool-down|output-stuck|part-lost|ageing)/.test(id),
  weight: 82,
  isOnTrace: true,
  say: ({ detector, count }) => ({ says: plain(heaterText(detector, count)), used: [] }),
};

function heaterText(id: string, count: number): string {
  if (/(dead|no-heat|off)/.test(id)) return `the reading falls ${timesText(count)} although the output is full`;
  if (/output-stuck|stuck-on/.test(id)) return `the reading climbs ${timesText(count)} although the output is zero`;
  if (/(part|lost|weak)/.test(id))
    return 'it heats slower and needs more output than before: part of the heater may be gone';
  if (/ageing/.test(id)) return 'it needs a little more output week by week: the heater may be ageing';
  if (/cool-down/.test(id)) return 'it cools otherwise than before';
  return 'it heats up otherwise than before';
}

/** Several zones at the same moment. */
export const shared: Family = {
  id: 'shared',
  has: (id) => /(card|shared|together|machine-event)/.test(id),
  weight: 84,
  isOnTrace: true,
  say: (symptom) => {
    const zones = factOf(symptom, 'zonesAtOnceCount', 'zoneCount');
    const which = Number.isNaN(zones) ? 'several zones' : counted(Math.round(zones), 'zone');
    const moments = counted(symptom.count, 'moment');
    return {
      says: plain(`${which} lose their reading or jump together, in ${moments}`),
      used: ['zonesAtOnceCount', 'zoneCount', 'sharedCount'],
    };
  },
};

/** The sensor or the wiring was put right. */
export const repair: Family = {
  id: 'repair',
  has: (id) => /(repair|replace|new-life)/.test(id),
  weight: 20,
  isOnTrace: true,
  say: (symptom) => {
    const isListed = factOf(symptom, 'listedCount') > 0;
    const minutes = factOf(symptom, 'faultMinutes');
    const after = minutes > 0 ? ` after ${minutesText(minutes)} of fault` : '';
    const says = isListed
      ? `the maintenance list names a repair${after}; what came before counts for the old life`
      : `the fault ends as a repair would end it${after}`;
    return { says: plain(says), used: ['listedCount', 'faultMinutes', 'replacementCount'] };
  },
};

/** Alarms that the log of temperatures does not show. */
export const alarms: Family = {
  id: 'alarms',
  has: (id) => /alarm/.test(id),
  weight: 45,
  isOnTrace: true,
  say: ({ count }) => ({ says: plain(`the input alarm comes ${timesText(count)}`), used: [] }),
};
