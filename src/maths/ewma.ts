import type { Numbers } from './finite.js';

export interface EwmaSettings {
  /** Level before the first value. */
  readonly start: number;
  /** Share of the newest value, above 0 to 1. */
  readonly weight: number;
  /** Standard deviation of one value. */
  readonly sd: number;
  /** Distance of the limits in standard deviations of the average; 3 is common practice. */
  readonly limitSds: number;
}

export interface Ewma {
  /** As long as the values. */
  readonly average: Float64Array;
  readonly upper: number;
  readonly lower: number;
  /** Index of the first average outside the limits; −1 for none. */
  readonly firstSignal: number;
}

/**
 * Exponentially weighted moving average chart with steady-state limits start ± limitSds·sd·√(w/(2 − w))
 * (Roberts 1959; NIST/SEMATECH e-Handbook 6.3.2.4).
 *
 * @param values NaN and ±Infinity leave the average as it is.
 * @returns Empty average and −1 for no values. Never throws.
 */
export function ewma(values: Numbers, { start, weight, sd, limitSds }: EwmaSettings): Ewma {
  const reach = limitSds * sd * Math.sqrt(weight / (2 - weight));
  const average = new Float64Array(values.length);
  let level = start;
  let firstSignal = -1;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (Number.isFinite(value)) level = weight * value + (1 - weight) * level;
    average[i] = level;
    if (firstSignal < 0 && Math.abs(level - start) > reach) firstSignal = i;
  }
  return { average, upper: start + reach, lower: start - reach, firstSignal };
}
