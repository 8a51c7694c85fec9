import { exactTails, weightsFromRatios, type ExactTails } from './exact-tails.js';

/** Counts in two rows of two. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

const unknown: ExactTails = { atMost: NaN, atLeast: NaN, twoSided: NaN };

/**
 * Fisher's exact test of a 2 × 2 table, given its margins: the chance of this top left count or a higher one, of this or
 * a lower one, and of all tables no more likely (Fisher 1935, The Design of Experiments).
 *
 * @param table Whole counts, 0 or more.
 * @returns NaN for counts below 0 or not whole; all 1 where a margin is empty. Never throws. Cost: the smallest margin.
 */
export function fisherExact([[a, b], [c, d]]: TwoByTwo): ExactTails {
  if (![a, b, c, d].every((count) => Number.isInteger(count) && count >= 0)) return unknown;
  const least = Math.max(0, a - d);
  const count = Math.min(a + b, a + c) - least + 1;
  const logWeights = weightsFromRatios(count, (i) => {
    const x = least + i;
    return Math.log(((a + b - x + 1) * (a + c - x + 1)) / (x * (d - a + x)));
  });
  return exactTails(logWeights, a - least);
}
