import { logSumExp } from './log-odds.js';

export interface ExactTails {
  /** Chance of the observed place or a lower one. */
  readonly atMost: number;
  /** Chance of the observed place or a higher one. */
  readonly atLeast: number;
  /** Chance of all places no more likely than the observed one. */
  readonly twoSided: number;
}

/** Places whose chance differs by rounding only count as equally likely; the share R uses in its exact tests. From memory. */
const SAME = 1 + 1e-7;

/**
 * Tail probabilities of a distribution on neighbouring whole numbers, given by logarithms of weights up to a factor:
 * logarithms, because chances far from the middle are below the smallest double.
 *
 * @param logWeights One per place. @param observed Index of a place. Never throws.
 */
export function exactTails(logWeights: Float64Array, observed: number): ExactTails {
  const total = logSumExp(logWeights);
  const own = logWeights[observed]!;
  const chance = (which: (log: number, i: number) => boolean) =>
    Math.min(1, Math.exp(logSumExp(logWeights.filter(which)) - total));
  return {
    atMost: chance((_, i) => i <= observed),
    atLeast: chance((_, i) => i >= observed),
    twoSided: chance((log) => log <= own + Math.log(SAME)),
  };
}

/** Logarithms of weights from the ratio of each to the one before; the first is 0. */
export function weightsFromRatios(count: number, logRatio: (place: number) => number): Float64Array {
  const logWeights = new Float64Array(count);
  for (let i = 1; i < count; i++) logWeights[i] = logWeights[i - 1]! + logRatio(i);
  return logWeights;
}
