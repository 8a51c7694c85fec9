import { binomialTest } from './binomial.js';
import { finiteValues, type Numbers } from './finite.js';

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
