import { finiteValues, type Numbers } from './finite.js';
import { kendallS, kendallVariance } from './kendall.js';
import { normalTwoSidedP } from './normal.js';

export interface MannKendall {
  /** Rising pairs minus falling pairs; its sign is the direction. */
  readonly s: number;
  readonly variance: number;
  /** (S ∓ 1) / √variance; 0 where S is 0 or all values are equal. */
  readonly z: number;
  readonly pTwoSided: number;
  /** S over the number of pairs, −1 … 1. */
  readonly tau: number;
  /** Values used. */
  readonly count: number;
}

/**
 * Mann–Kendall test for a monotonic trend (Mann 1945; Kendall 1970; ties and continuity correction as in
 * Helsel & Hirsch, Statistical Methods in Water Resources). Assumes independent values: neighbouring values that
 * resemble each other make p too small.
 *
 * @param values In time order, any spacing; NaN and ±Infinity are skipped.
 * @returns NaN p for fewer than 3 usable values. The normal approximation is common practice from about 10 on.
 *   Never throws. Cost n·log n.
 */
export function mannKendall(values: Numbers): MannKendall {
  const kept = finiteValues(values);
  const count = kept.length;
  const s = kendallS(kept);
  const variance = kendallVariance(
    kept.map((_, i) => i),
    kept,
  );
  const z = variance > 0 ? (s - Math.sign(s)) / Math.sqrt(variance) : 0;
  const pTwoSided = count < 3 ? NaN : normalTwoSidedP(z);
  return { s, variance, z, pTwoSided, tau: s / ((count * (count - 1)) / 2), count };
}
