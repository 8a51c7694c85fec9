import { finiteValues, sortedFinite, type Numbers } from './finite.js';
import { median, medianOfSorted } from './quantile.js';
import { robustSd } from './spread.js';

/**
 * Arithmetic mean.
 *
 * @param values NaN and ±Infinity are skipped.
 * @returns NaN for no data. Never throws.
 */
export function mean(values: Numbers): number {
  const kept = finiteValues(values);
  return kept.reduce((sum, value) => sum + value, 0) / kept.length;
}

/**
 * Mean after leaving out floor(n·trim) values at each end (R `mean(x, trim)`).
 *
 * @param trim 0 to under 0.5; 0.5 or more gives the median, as in R.
 * @returns NaN for no data. Never throws. Cost n·log n.
 */
export function trimmedMean(values: Numbers, trim: number): number {
  const sorted = sortedFinite(values);
  if (trim >= 0.5) return medianOfSorted(sorted);
  const cut = Math.floor(sorted.length * Math.max(0, trim));
  return mean(sorted.subarray(cut, sorted.length - cut));
}

/**
 * Weighted median: the smallest value at which the weights up to it reach half of all weight;
 * the mean of it and the next one where they reach exactly half. Equal weights give the plain median.
 *
 * @param weights As long as `values`; places with a weight that is not above 0 are skipped.
 * @returns NaN for no data. Never throws. Cost n·log n.
 */
export function weightedMedian(values: Numbers, weights: Numbers): number {
  const places = Array.from({ length: values.length }, (_, i) => i)
    .filter((i) => Number.isFinite(values[i]!) && Number.isFinite(weights[i]) && weights[i]! > 0)
    .sort((a, b) => values[a]! - values[b]!);
  const half = places.reduce((sum, i) => sum + weights[i]!, 0) / 2;
  let reached = 0;
  for (const [rank, i] of places.entries()) {
    reached += weights[i]!;
    if (reached > half) return values[i]!;
    if (reached === half) return (values[i]! + values[places[rank + 1]!]!) / 2;
  }
  return NaN;
}

/** 95 % efficient on normal data (Huber 1981, Robust Statistics; from memory). */
export const HUBER_TUNING = 1.345;

/**
 * Huber M-estimate of location: the mean with values beyond 1.345 robust standard deviations pulled in to that
 * distance, repeated until it rests. The scale is the MAD about the median and stays fixed.
 *
 * @returns The median where the MAD is 0; NaN for no data. Never throws. Cost n·log n.
 */
export function huberLocation(values: Numbers, tuning = HUBER_TUNING): number {
  const kept = finiteValues(values);
  const reach = tuning * robustSd(kept);
  let centre = median(kept);
  if (!(reach > 0)) return centre;
  for (let round = 0; round < 100; round++) {
    const moved = mean(kept.map((value) => Math.min(centre + reach, Math.max(centre - reach, value))));
    const isAtRest = Math.abs(moved - centre) <= 1e-12 * reach;
    centre = moved;
    if (isAtRest) break;
  }
  return centre;
}

/**
 * Hodges–Lehmann estimate of location: median of the means of all pairs, each value with itself included.
 *
 * @returns NaN for no data. Never throws. Cost n²·log n in time, n² in memory: meant for up to about 1000 values.
 */
export function hodgesLehmann(values: Numbers): number {
  const kept = finiteValues(values);
  const means = new Float64Array((kept.length * (kept.length + 1)) / 2);
  let count = 0;
  for (let i = 0; i < kept.length; i++) {
    for (let j = i; j < kept.length; j++) means[count++] = (kept[i]! + kept[j]!) / 2;
  }
  return median(means);
}
