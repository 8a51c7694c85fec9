import type { Numbers } from './finite.js';

export interface CusumSettings {
  /** The level the values should have. */
  readonly target: number;
  /** What a value may differ without adding up (k·σ, mostly half the shift to be found). */
  readonly slack: number;
  /** A sum above this is a signal (h·σ). */
  readonly limit: number;
}

/** Where a running chart stands; start with `NO_CUSUM`. */
export interface CusumState {
  readonly high: number;
  readonly low: number;
}

export const NO_CUSUM: CusumState = { high: 0, low: 0 };

/** One value further. A value that is NaN or ±Infinity leaves the state as it is. Never throws. */
export function nextCusum(state: CusumState, value: number, { target, slack }: CusumSettings): CusumState {
  if (!Number.isFinite(value)) return state;
  return {
    high: Math.max(0, state.high + value - target - slack),
    low: Math.max(0, state.low - value + target - slack),
  };
}

export interface Cusum {
  /** Sums upward and downward, both counted positive, as long as the values. */
  readonly high: Float64Array;
  readonly low: Float64Array;
  /** Index of the first value at which a sum is above the limit; −1 for none. */
  readonly firstSignal: number;
  /** Which sum that was; 0 for none. */
  readonly direction: 1 | -1 | 0;
  /** Index of the value after which the signalling sum was last 0: the shift is likely to have begun there; −1 for none. */
  readonly likelyStart: number;
}

/**
 * Two-sided tabular CUSUM chart, no reset after a signal (Page 1954; NIST/SEMATECH e-Handbook 6.3.2.3;
 * start of the shift as in Montgomery, Introduction to Statistical Quality Control, ch. 9).
 *
 * @param values NaN and ±Infinity change nothing; the sums stay.
 * @returns Empty arrays and −1 for no values. Never throws.
 */
export function cusum(values: Numbers, settings: CusumSettings): Cusum {
  const high = new Float64Array(values.length);
  const low = new Float64Array(values.length);
  let state = NO_CUSUM;
  let firstSignal = -1;
  for (let i = 0; i < values.length; i++) {
    state = nextCusum(state, values[i]!, settings);
    high[i] = state.high;
    low[i] = state.low;
    if (firstSignal < 0 && Math.max(state.high, state.low) > settings.limit) firstSignal = i;
  }
  if (firstSignal < 0) return { high, low, firstSignal, direction: 0, likelyStart: -1 };
  const direction = high[firstSignal]! > settings.limit ? 1 : -1;
  return { high, low, firstSignal, direction, likelyStart: firstAfterZero(direction > 0 ? high : low, firstSignal) };
}

function firstAfterZero(sums: Float64Array, from: number): number {
  let i = from;
  while (i > 0 && sums[i - 1]! > 0) i--;
  return i;
}
