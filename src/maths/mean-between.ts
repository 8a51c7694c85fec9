import type { Numbers } from './finite.js';

/**
 * Mean of a stretch of values, those without data left out.
 *
 * @param from First place of the stretch.
 * @param to Place after the last.
 * @returns NaN where the stretch holds no number. Never throws.
 */
export function meanBetween(values: Numbers, from: number, to: number): number {
  let sum = 0;
  let count = 0;
  for (let i = Math.max(0, from); i < Math.min(to, values.length); i++) {
    if (Number.isNaN(values[i]!)) continue;
    sum += values[i]!;
    count++;
  }
  return sum / count;
}
