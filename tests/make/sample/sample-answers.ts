import type { Plant } from '../made-plant.js';
import type { ZoneTruth } from '../truth.js';

/** What was wrong, in a fitter's words. */
const said: Readonly<Record<string, string>> = {
  wire_flex_open: 'the cable breaks for a few seconds at a time where the moving jaw bends it, more each day',
  wire_wet: 'water in the connector after each wash-down, drying over some hours',
  sensor_drift: 'the element reads lower and lower; the loop hides it while production runs',
  heater_half: 'part of the heater is gone',
  sensor_open: 'the element went open at once and was replaced the same day',
};

function row({ zone, cause, fault, onset, fixed, driftC, downtimeMin }: ZoneTruth): string {
  const day = (iso: string | null): string => (iso === null ? '–' : iso.slice(0, 16).replace('T', ' '));
  const drift = driftC === null ? '–' : `${driftC.toFixed(1)} °C`;
  return `| ${zone} | ${cause} | ${said[fault] ?? fault} | ${day(onset)} | ${day(fixed)} | ${drift} | ${Math.round(downtimeMin)} |`;
}

/** The truth about the sample plant, for a reader who has made up their mind. */
export function answersText(plants: readonly Plant[]): string {
  const zones = plants.flatMap(({ truth }) => truth.zones);
  const faulty = zones.filter(({ cause }) => cause !== 'none');
  return [
    '# What is really wrong in these logs',
    '',
    'The plant is invented and was simulated, so the truth is known. Times are UTC.',
    '',
    '| zone | cause | what happens | from | repaired | reading minus truth at the end | minutes of production lost |',
    '|---|---|---|---|---|---|---|',
    ...faulty.map(row),
    '',
    'Production is lost to a zone while it keeps its machine from running, at least a minute a stop; the restarts after that are not counted.',
    '',
    `The other ${zones.length - faulty.length} zones are healthy. What may look like a fault and is none:`,
    '',
    '- TS1, 9 September from 09:00 local time: thicker product, every zone needs more heat.',
    '- TS2, 17 September from 12:00 local time: a gate stands open, every zone needs more heat.',
    '- BF1, 14 September 09:12 local time: the controller restarts, a few readings of 0.',
    '- BF1: the clock of the alarm log runs four minutes ahead of the temperature log.',
    '',
    'Lines of `maintenance.csv` that say "Weekly clean" are routine and changed nothing.',
    '',
  ].join('\n');
}
