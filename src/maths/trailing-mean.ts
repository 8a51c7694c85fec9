import type { Numbers } from './finite.js';

/**
 * Mean of the finite values among the last `places` up to and with each place.
 *
 * @returns One value per place; NaN where none of them is finite.
 */
export function trailingMean(values: Numbers, places: number): Float64Array {
  let sum = 0;
  let count = 0;
  const means = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const comes = values[i]!;
    if (Number.isFinite(comes)) {
      sum += comes;
      count++;
    }
    const goes = i >= places ? values[i - places]! : NaN;
    if (Number.isFinite(goes)) {
      sum -= goes;
      count--;
    }
    means[i] = count > 0 ? sum / count : NaN;
  }
  return means;
}
