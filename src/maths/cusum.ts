import type { Numbers } from './finite.js';

export interface CusumSettings {
  /** The level the values should have. */
  readonly target: number;
  /** What a value may differ without adding up (k·σ, mostly half the shift to be found). */
  readonly slack: number;
}

export interface Cusum {
  /** Sums upward and downward, both counted positive, as long as the values. A sum above h·σ is a signal. */
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/**
 * Two-sided tabular CUSUM chart, no reset after a signal (Page 1954; NIST/SEMATECH e-Handbook 6.3.2.3).
 *
 * @param values NaN and ±Infinity change nothing; the sums stay.
 * @returns Empty arrays for no values. Never throws.
 */
export function cusum(values: Numbers, { target, slack }: CusumSettings): Cusum {
  const high = new Float64Array(values.length);
  const low = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    const [highBefore, lowBefore] = i === 0 ? [0, 0] : [high[i - 1]!, low[i - 1]!];
    const apart = values[i]! - target;
    const counts = Number.isFinite(apart);
    high[i] = counts ? Math.max(0, highBefore + apart - slack) : highBefore;
    low[i] = counts ? Math.max(0, lowBefore - apart - slack) : lowBefore;
  }
  return { high, low };
}

/**
 * Index of the value after which a sum was last 0: a shift that shows at `from` is likely to have begun there
 * (Montgomery, Introduction to Statistical Quality Control, ch. 9).
 */
export function likelyStart(sums: Float64Array, from: number): number {
  let i = from;
  while (i > 0 && sums[i - 1]! > 0) i--;
  return i;
}
