import { binomialTest } from './binomial.js';
import { finiteValues, type Numbers } from './finite.js';
import { normalTwoSidedP } from './normal.js';
import { median } from './quantile.js';

export interface SignTest {
  readonly above: number;
  readonly below: number;
  /** 1 for no values that differ. */
  readonly pTwoSided: number;
}

/**
 * Sign test: whether as many values lie above `centre` as below, exact binomial. Values equal to it are left out.
 *
 * @param values NaN and ±Infinity are skipped. Never throws.
 */
export function signTest(values: Numbers, centre = 0): SignTest {
  const kept = finiteValues(values);
  const above = kept.filter((value) => value > centre).length;
  const below = kept.filter((value) => value < centre).length;
  return { above, below, pTwoSided: binomialTest(above, above + below).twoSided };
}

export interface RunsTest {
  /** Stretches of values on the same side. */
  readonly runs: number;
  readonly expectedRuns: number;
  /** Below 0: fewer runs than chance gives, neighbours resemble each other. */
  readonly z: number;
  readonly pTwoSided: number;
}

/**
 * Wald–Wolfowitz runs test about the median, normal approximation without continuity correction
 * (NIST/SEMATECH e-Handbook 1.3.5.13; common practice from about 10 values on each side).
 *
 * @param values In time order; NaN, ±Infinity and values equal to the centre are skipped.
 * @param centre Default: their median.
 * @returns NaN p where one side has no value or both have just one. Never throws.
 */
export function runsTest(values: Numbers, centre = median(values)): RunsTest {
  const isAbove = Array.from(finiteValues(values))
    .filter((value) => value !== centre)
    .map((value) => value > centre);
  const above = isAbove.filter(Boolean).length;
  const below = isAbove.length - above;
  const n = isAbove.length;
  const runs = isAbove.filter((side, i) => side !== isAbove[i - 1]).length;
  const expectedRuns = n === 0 ? NaN : (2 * above * below) / n + 1;
  const variance = ((expectedRuns - 1) * (expectedRuns - 2)) / (n - 1);
  const z = variance > 0 ? (runs - expectedRuns) / Math.sqrt(variance) : NaN;
  return { runs, expectedRuns, z, pTwoSided: normalTwoSidedP(z) };
}
