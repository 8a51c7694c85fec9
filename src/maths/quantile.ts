import { quantileSorted as quantileType7, quickselect } from 'simple-statistics';
import { finiteInto, type Numbers } from './finite.js';

/** Working room for one call: quantiles are asked for by the ten thousand, and copies of their own would pile up. */
let room = new Float64Array(64);

/**
 * Quantile by linear interpolation between order statistics, R type 7
 * (Hyndman & Fan 1996, The American Statistician 50:361–365, definition 7).
 *
 * @param values Any order; NaN and ±Infinity are skipped.
 * @param share 0 to 1.
 * @returns NaN for no data or a share outside 0 … 1. Never throws. Cost about n: two order statistics need no sorting.
 */
export function quantile(values: Numbers, share: number): number {
  if (room.length < values.length) room = new Float64Array(Math.max(values.length, 2 * room.length));
  const kept = room;
  const count = finiteInto(kept, values);
  if (count === 0 || !(share >= 0 && share <= 1)) return NaN;
  const place = (count - 1) * share;
  const lower = Math.floor(place);
  // Works by index only, so typed arrays will do. It takes a last place of 0 for none given.
  if (count > 1) quickselect(kept as unknown as number[], lower, 0, count - 1);
  if (lower === place) return kept[lower]!;
  let next = Infinity; // the least of those behind, which are none of them smaller
  for (let i = lower + 1; i < count; i++) if (kept[i]! < next) next = kept[i]!;
  return kept[lower]! + (place - lower) * (next - kept[lower]!);
}

/** As `quantile`, for numbers that are ascending and all usable already. Constant cost. */
function quantileOfSorted(ascending: Numbers, share: number): number {
  if (ascending.length === 0 || !(share >= 0 && share <= 1)) return NaN;
  return quantileType7(ascending as number[], share); // reads by index only, so typed arrays will do
}

/**
 * Median: the middle value, or the mean of the two middle ones.
 *
 * @param values Any order; NaN and ±Infinity are skipped.
 * @returns NaN for no data. Never throws. Cost about n.
 */
export function median(values: Numbers): number {
  return quantile(values, 0.5);
}

/** As `median`, for numbers that are ascending and all usable already. Constant cost. */
export function medianOfSorted(ascending: Numbers): number {
  return quantileOfSorted(ascending, 0.5);
}
