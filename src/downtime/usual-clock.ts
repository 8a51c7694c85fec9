import { DAY_MS } from '../model/time-units.js';
import { median } from '../maths/quantile.js';

/**
 * The usual time of day of some moments, as ms since midnight UTC: their median on the circle of the day, for 23:50
 * and 00:10 lie twenty minutes apart and not a day.
 *
 * @returns NaN for none. Never throws.
 */
export function usualTimeOfDayMs(timesMs: readonly number[]): number {
  const [first] = timesMs;
  if (first === undefined) return NaN;
  const fromFirstMs = timesMs.map((timeMs) => remainder(timeMs - first + DAY_MS / 2) - DAY_MS / 2);
  return remainder(first + median(fromFirstMs));
}

function remainder(ms: number): number {
  return ((ms % DAY_MS) + DAY_MS) % DAY_MS;
}
