import { exactTails, meanPlace, weightsFromRatios } from './exact-tails.js';

/** Counts in two rows of two. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

export interface FisherExact {
  /** Conditional maximum likelihood; 0 or Infinity at the ends, NaN where a row or column is empty. */
  readonly oddsRatio: number;
  /** Two-sided limits; for a one-sided limit at 95 % ask for 0.9. */
  readonly low: number;
  readonly high: number;
  /** All tables no more likely than this one. */
  readonly pTwoSided: number;
  /** This top left count or more, and this or fewer, if rows and columns had nothing to do with each other. */
  readonly pHigher: number;
  readonly pLower: number;
}

/**
 * Fisher's exact test of a 2 × 2 table, given its margins (Fisher 1935, The Design of Experiments; odds ratio and limits
 * from the noncentral hypergeometric distribution, Agresti, Categorical Data Analysis, as in R `fisher.test`).
 *
 * @param table Whole counts, 0 or more. @param confidence Two-sided.
 * @returns NaN for counts below 0 or not whole; odds ratio NaN, 0 … Infinity and p = 1 where a margin is empty. Never throws.
 *   Cost: the smallest margin.
 */
export function fisherExact([[a, b], [c, d]]: TwoByTwo, confidence = 0.95): FisherExact {
  if (![a, b, c, d].every((count) => Number.isInteger(count) && count >= 0)) return unknown;
  const least = Math.max(0, a - d);
  const count = Math.min(a + b, a + c) - least + 1;
  const place = a - least;
  const logWeights = weightsFromRatios(count, (i) => {
    const x = least + i;
    return Math.log(((a + b - x + 1) * (a + c - x + 1)) / (x * (d - a + x)));
  });
  const tails = exactTails(logWeights, place);
  const tilted = (logOdds: number) => logWeights.map((log, i) => log + i * logOdds);
  const tail = (1 - confidence) / 2;
  const solve = (f: (logOdds: number) => number, goal: number) => Math.exp(solveRising(f, goal));
  const isLowest = place === 0;
  const isHighest = place === count - 1;
  const estimate = () => solve((logOdds) => meanPlace(tilted(logOdds)), place);
  return {
    oddsRatio: isLowest ? (isHighest ? NaN : 0) : isHighest ? Infinity : estimate(),
    low: isLowest ? 0 : solve((logOdds) => exactTails(tilted(logOdds), place).atLeast, tail),
    high: isHighest ? Infinity : solve((logOdds) => -exactTails(tilted(logOdds), place).atMost, -tail),
    pTwoSided: tails.twoSided,
    pHigher: tails.atLeast,
    pLower: tails.atMost,
  };
}

const unknown = { oddsRatio: NaN, low: NaN, high: NaN, pTwoSided: NaN, pHigher: NaN, pLower: NaN };

/** Where a rising function passes the goal, by halving a range that is widened until it holds the place. */
function solveRising(f: (at: number) => number, goal: number): number {
  let low = -1;
  let high = 1;
  while (f(low) > goal && low > -1000) low *= 2;
  while (f(high) < goal && high < 1000) high *= 2;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (f(middle) < goal) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
