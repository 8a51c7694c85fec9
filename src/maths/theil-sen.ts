import { pairsByX, type Numbers, type Pairs } from './finite.js';
import { kendallVariance } from './kendall.js';
import { zForConfidence } from './normal.js';
import { median, medianOfSorted } from './quantile.js';

export interface TheilSen {
  readonly slope: number;
  /** median(y) − slope·median(x) (Conover 1980, as in Helsel & Hirsch). */
  readonly intercept: number;
  /** Limits of the slope; ∓Infinity where the points are too few to give one. */
  readonly low: number;
  readonly high: number;
  /** Usable points, before any thinning. */
  readonly count: number;
  /** Points used; fewer than `count` where they were thinned evenly. */
  readonly used: number;
}

export interface TheilSenOptions {
  /** Two-sided, default 0.95. */
  readonly confidence?: number;
  /** More points than this (2 or more, whole) are thinned evenly along x, first and last kept. Default 1000: 500 000 slopes, 4 MB. */
  readonly mostPoints?: number;
}

/**
 * Theil–Sen line: the median of the slopes of all pairs of points with different x (Theil 1950; Sen 1968,
 * JASA 63:1379–1389, for the limits from the variance of Kendall's S with ties). Holds with up to 29 % outliers.
 * The limits assume independent residuals.
 *
 * @param x, y The same length, any order; pairs with NaN or ±Infinity are skipped.
 * @returns NaN slope for fewer than 2 points of different x. Never throws. Cost n²·log n up to `mostPoints`.
 */
export function theilSen(x: Numbers, y: Numbers, options: TheilSenOptions = {}): TheilSen {
  const { confidence = 0.95, mostPoints = 1000 } = options;
  const all = pairsByX(x, y);
  const points = thinned(all, mostPoints);
  const slopes = pairSlopes(points);
  const slope = medianOfSorted(slopes);
  const width = zForConfidence(confidence) * Math.sqrt(kendallVariance(points.x, points.y));
  const rank = Math.round((slopes.length - width) / 2);
  return {
    slope,
    intercept: median(points.y) - slope * median(points.x),
    low: slopes.length === 0 ? NaN : rank >= 1 ? slopes[rank - 1]! : -Infinity,
    high: slopes.length === 0 ? NaN : rank >= 1 ? slopes[slopes.length - rank]! : Infinity,
    count: all.x.length,
    used: points.x.length,
  };
}

function pairSlopes({ x, y }: Pairs): Float64Array {
  const slopes = new Float64Array((x.length * (x.length - 1)) / 2);
  let count = 0;
  for (let i = 0; i < x.length; i++) {
    for (let j = i + 1; j < x.length; j++) {
      const run = x[j]! - x[i]!;
      if (run > 0) slopes[count++] = (y[j]! - y[i]!) / run;
    }
  }
  return slopes.subarray(0, count).sort();
}

function thinned({ x, y }: Pairs, mostPoints: number): Pairs {
  if (x.length <= mostPoints) return { x, y };
  const step = (x.length - 1) / (mostPoints - 1);
  const places = Array.from({ length: mostPoints }, (_, i) => Math.round(i * step));
  return { x: Float64Array.from(places, (i) => x[i]!), y: Float64Array.from(places, (i) => y[i]!) };
}
