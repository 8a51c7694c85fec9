import chiSquareCdf from '@stdlib/stats-base-dists-chisquare-cdf';
import type { Numbers } from './finite.js';
import { momentsOf, populationSd, sampleSd } from './moments.js';

export interface Dispersion {
  /** Sample variance over mean: 1 for events that come by chance, above 1 for bursts. */
  readonly index: number;
  /** Chance of such an index, or a higher one, for independent events. */
  readonly pHigher: number;
  /** Number of periods. */
  readonly count: number;
}

/**
 * Index of dispersion of counts in equal periods, (n − 1)·index ~ chi-square with n − 1 degrees of freedom
 * (Fisher 1925, Statistical Methods for Research Workers; good from a mean of about 1 on, common practice).
 *
 * @param counts One per period, zeros included; NaN is skipped.
 * @returns NaN for fewer than 2 periods or no events. Never throws.
 */
export function dispersion(counts: Numbers): Dispersion {
  const moments = momentsOf(counts);
  const index = sampleSd(moments) ** 2 / moments.mean;
  const dof = moments.count - 1;
  if (!Number.isFinite(index)) return { index: NaN, pHigher: NaN, count: moments.count };
  return { index, pHigher: 1 - chiSquareCdf(dof * index, dof), count: moments.count };
}

/**
 * Burstiness (σ − μ)/(σ + μ) of the gaps between events: −1 for a clock, near 0 for chance, towards 1 for bursts
 * (Goh & Barabási 2008, Europhysics Letters 81:48002).
 *
 * @param times Of the events, ascending. NaN for fewer than 3 events, or all at once. Never throws.
 */
export function burstiness(times: Numbers): number {
  const gaps = Array.from(times)
    .slice(1)
    .map((time, i) => time - times[i]!);
  const moments = momentsOf(gaps);
  if (moments.count < 2) return NaN;
  const sd = populationSd(moments);
  return (sd - moments.mean) / (sd + moments.mean);
}
