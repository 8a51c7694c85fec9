import { finiteValues, type Numbers } from './finite.js';
import { median } from './quantile.js';

/** 1/Φ⁻¹(0.75): turns the MAD of normal data into its standard deviation. By definition. */
export const MAD_TO_SD = 1.482602218505602;

/** Standard deviation of second differences of independent noise over that of the noise: variance 1 + 4 + 1. */
export const SECOND_DIFFERENCE_FACTOR = Math.sqrt(6);

/**
 * Median absolute deviation: median of |x − median(x)|, not scaled.
 *
 * @param values NaN and ±Infinity are skipped.
 * @returns 0 for a single value, NaN for none. Never throws. Cost n·log n.
 */
export function medianAbsoluteDeviation(values: Numbers): number {
  const kept = finiteValues(values);
  const centre = median(kept);
  for (let i = 0; i < kept.length; i++) kept[i] = Math.abs(kept[i]! - centre); // a copy already
  return median(kept);
}

/**
 * Standard deviation estimated robustly: 1.4826 × MAD, right for normal data and not moved by outliers
 * below half of the sample. Zero where more than half of the values are equal (coarse resolution does that).
 *
 * @returns 0 for a single value, NaN for none. Never throws. Cost n·log n.
 */
export function robustSd(values: Numbers): number {
  return MAD_TO_SD * medianAbsoluteDeviation(values);
}

/**
 * Noise of a series whose level may step or drift: robust standard deviation of neighbouring differences, over √2,
 * but never below resolution/√12, the standard deviation of rounding to that resolution (uniform error); the resolution
 * is the smallest difference seen. Without that, coarsely rounded readings would seem free of noise.
 * Neighbours are the usable values next to each other, across gaps.
 *
 * @returns 0 where all values are equal, NaN for fewer than 2 usable values. Never throws. Cost n·log n.
 */
export function noiseSd(values: Numbers): number {
  const kept = finiteValues(values);
  if (kept.length < 2) return NaN;
  const steps = kept.subarray(1).map((value, i) => value - kept[i]!);
  return Math.max(robustSd(steps) / Math.SQRT2, resolution(steps, kept) / Math.sqrt(12));
}

/** Differences below this share of the values are what arithmetic leaves, not resolution. */
const ARITHMETIC_SHARE = 1e-9;

function resolution(steps: Float64Array, values: Float64Array): number {
  const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const isReal = (size: number) => size > ARITHMETIC_SHARE * largest;
  const least = steps.reduce((low, step) => (isReal(Math.abs(step)) ? Math.min(low, Math.abs(step)) : low), Infinity);
  return Number.isFinite(least) ? least : 0;
}
