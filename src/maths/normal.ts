import cdf from '@stdlib/stats-base-dists-normal-cdf';
import quantile from '@stdlib/stats-base-dists-normal-quantile';

/** Φ(z): share of a standard normal below z. NaN for NaN. */
export function normalCdf(z: number): number {
  return cdf(z, 0, 1);
}

/** Φ⁻¹(share): the z below which that share lies. NaN outside 0 … 1. */
export function normalQuantile(share: number): number {
  return quantile(share, 0, 1);
}

/** Density of the standard normal. */
export function normalDensity(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** Probability of a standard normal at least as far from 0 as z, both tails. NaN for NaN. */
export function normalTwoSidedP(z: number): number {
  return 2 * normalCdf(-Math.abs(z));
}

/** The z of a two-sided confidence: 0.95 gives 1.96. NaN outside 0 … 1. */
export function zForConfidence(confidence: number): number {
  return normalQuantile((1 + confidence) / 2);
}
