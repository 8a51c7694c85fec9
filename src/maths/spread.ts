import { finiteValues, type Numbers } from './finite.js';
import { median } from './quantile.js';

/** 1/Φ⁻¹(0.75): turns the MAD of normal data into its standard deviation. By definition. */
export const MAD_TO_SD = 1.482602218505602;

/**
 * Median absolute deviation: median of |x − median(x)|, not scaled.
 *
 * @param values NaN and ±Infinity are skipped.
 * @returns 0 for a single value, NaN for none. Never throws. Cost n·log n.
 */
export function medianAbsoluteDeviation(values: Numbers): number {
  const kept = finiteValues(values);
  const centre = median(kept);
  return median(kept.map((value) => Math.abs(value - centre)));
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
 * Noise of a series whose level may step or drift: robust standard deviation of neighbouring differences, over √2.
 * Neighbours are the usable values next to each other, across gaps.
 *
 * @returns NaN for fewer than 2 usable values. Never throws. Cost n·log n.
 */
export function noiseSd(values: Numbers): number {
  const kept = finiteValues(values);
  if (kept.length < 2) return NaN;
  const steps = kept.subarray(1).map((value, i) => value - kept[i]!);
  return robustSd(steps) / Math.SQRT2;
}
