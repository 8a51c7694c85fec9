import type { Numbers } from './finite.js';

/**
 * Mean of the finite values among the last `places` up to and with each place.
 *
 * @returns One value per place; NaN where none of them is finite.
 */
export function trailingMean(values: Numbers, places: number): Float64Array {
  let sum = 0;
  let count = 0;
  const add = (value: number, sign: 1 | -1): void => {
    if (!Number.isFinite(value)) return;
    sum += sign * value;
    count += sign;
  };
  const means = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    add(values[i]!, 1);
    if (i >= places) add(values[i - places]!, -1);
    means[i] = count > 0 ? sum / count : NaN;
  }
  return means;
}
