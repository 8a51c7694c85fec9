import type { Numbers } from './finite.js';
import { mean } from './location.js';

/**
 * Correlation of each value with the next, Σ(xᵢ − m)(xᵢ₊₁ − m) / Σ(xᵢ − m)² (Box & Jenkins, Time Series Analysis, ch. 2).
 *
 * @param values In time order at even steps; a pair with NaN or ±Infinity is skipped.
 * @returns NaN for fewer than 3 usable values or no spread. Never throws.
 */
export function lagOneCorrelation(values: Numbers): number {
  const centre = mean(values);
  let products = 0;
  let squares = 0;
  let count = 0;
  for (let i = 0; i < values.length; i++) {
    const here = values[i]! - centre;
    const next = values[i + 1]! - centre;
    if (!Number.isFinite(here)) continue;
    count++;
    squares += here * here;
    if (Number.isFinite(next)) products += here * next;
  }
  return count >= 3 && squares > 0 ? products / squares : NaN;
}

/**
 * How many independent values tell as much about the mean as `count` values with this lag-one correlation:
 * count·(1 − r)/(1 + r), for an autoregressive series of first order, a long one (Bayley & Hammersley 1946; from memory).
 *
 * @returns At least 1 and at most `count` (a negative correlation earns nothing); `count` where r is NaN. Never throws.
 */
export function effectiveCount(count: number, lagOne: number): number {
  if (!(lagOne > 0)) return count;
  return Math.max(1, (count * (1 - lagOne)) / (1 + lagOne));
}
