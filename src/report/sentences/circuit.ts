import type { SymptomNote } from '../../model/findings.js';
import { minutesText, shortNumber } from '../text/numbers.js';
import { level, phrase, plain, type Phrase } from '../text/phrase.js';
import { factOf, timesText, type Family } from './family.js';

/** Opens counted against exposure: moving against standing, hot against cold, first days against last. */
export const openRates: Family = {
  id: 'open-rates',
  has: (id) => /^opens-(by|growth|while|when)/.test(id),
  weight: 90,
  isOnTrace: false,
  say: (symptom) => {
    for (const comparison of comparisons) {
      const rates = comparison.facts.map((name) => symptom.facts[name]);
      const [first, second] = rates;
      if (first === undefined || second === undefined) continue;
      return { says: plain(comparison.says(shortNumber(first), shortNumber(second))), used: comparison.facts };
    }
    return { says: plain('its opens were compared between times and conditions'), used: [] };
  },
};

/** Each states both sides and leaves the judgement to the weighing: the facts may speak either way. */
const comparisons = [
  {
    facts: ['runningOpensPerHour', 'stoppedOpensPerHour'],
    says: (running: string, stopped: string) =>
      `it opens ${running} times an hour while the machine runs and ${stopped} times while it stands`,
  },
  {
    facts: ['hotOpensPerHour', 'coldOpensPerHour'],
    says: (hot: string, cold: string) => `it opens ${hot} times an hour hot and ${cold} times cold`,
  },
  {
    facts: ['lastCount', 'firstCount'],
    says: (last: string, first: string) =>
      `it opens ${last} times in the later half and ${first} times in the earlier half`,
  },
] as const;

/** The circuit is open, shorted, or the log holds a word or code in place of a temperature. */
export const circuit: Family = {
  id: 'circuit',
  has: (id) => /(^|-)(opens?|full-scale|above-scale|below-scale|short|text|quality|restart)(-|$)/.test(id),
  weight: 80,
  isOnTrace: true,
  say: (symptom) => {
    const used = ['openCount', 'shortCount', 'longestOpenMinutes', 'standingMinutes', 'inLogCount'];
    const standing = factOf(symptom, 'standingMinutes');
    const end: Phrase = standing > 0 ? [`; it has stood so for ${minutesText(standing)} when the log ends`] : [];
    return { says: phrase`${circuitText(symptom)}${longestText(symptom)}${end}`, used };
  },
};

function circuitText(symptom: SymptomNote): string {
  const shorts = factOf(symptom, 'shortCount');
  const isShort = shorts > 0 && shorts >= symptom.count / 2;
  if (isShort) return `the reading goes to the bottom of its scale ${timesText(symptom.count)}`;
  return `the sensor circuit opens ${timesText(symptom.count)}`;
}

function longestText(symptom: SymptomNote): string {
  const longest = factOf(symptom, 'longestOpenMinutes', 'longestMinutes');
  if (!(longest > 0)) return '';
  return symptom.count === 1 ? `, for ${minutesText(longest)}` : `, the longest for ${minutesText(longest)}`;
}

/** A number that is no temperature. */
export const codes: Family = {
  id: 'codes',
  has: (id) => /(^|-)codes?(-|$)/.test(id),
  weight: 78,
  isOnTrace: true,
  say: (symptom) => {
    const valueDegC = factOf(symptom, 'valueDegC');
    const value: Phrase = Number.isNaN(valueDegC) ? ['a value'] : phrase`exactly ${level(valueDegC)}`;
    const says = phrase`the log holds ${value} ${timesText(symptom.count)}, a code and no temperature`;
    return { says, used: ['valueDegC', 'spanCount', 'isAboveCount', 'isBelowCount'] };
  },
};
