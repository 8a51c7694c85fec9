import type { RoledSeries } from './roled-series.js';
import type { Series } from './series.js';
import { saysAlarm } from '../names/flag-names.js';

/** So many of the cells must be flags; a cell may be spoilt (own choice). */
const leastFlags = 0.9;

/** A column that says when an alarm of a zone stands, by its name and its cells; null for any other. */
export function asAlarmFlag(series: Series): RoledSeries | null {
  const said = saysAlarm(series.name);
  if (said === 0 || !holdsFlags(series, said === 2)) return null;
  const why = said === 2 ? 'its name says alarm or fault, and flags stand below it' : 'a limit, and flags below it';
  return { series, role: 'alarm', rest: series.name, unit: null, scale: 1, why };
}

/** Whether blanks of the column mean that no alarm stands: words stand in it, and none says so. */
export function isBlankAtRest({ numbers, restWords }: Series): boolean {
  return numbers === 0 && restWords === 0;
}

/** @param mayBeBlank Whether a column without any sampled cell counts: alarms are rare, and some write words for them only. */
function holdsFlags({ value, filled, numbers, flagWords }: Series, mayBeBlank: boolean): boolean {
  if (filled === 0) return mayBeBlank;
  if (numbers + flagWords < leastFlags * filled) return false;
  const known = value.filter((number) => !Number.isNaN(number));
  if (known.every((number) => number === 0 || Math.abs(number) === 1)) return true;
  // Numbers of alarms, nought for none: limits and set points are not nought most of the time.
  const noughts = known.filter((number) => number === 0).length;
  return known.every((number) => Number.isInteger(number) && number >= 0) && noughts * 2 >= known.length;
}
