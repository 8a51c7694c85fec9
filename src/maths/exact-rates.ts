import { binomialTest } from './binomial.js';
import { clopperPearson } from './binomial-interval.js';

export interface Rate {
  readonly events: number;
  /** Time or amount watched, any one unit for both rates. */
  readonly exposure: number;
}

export interface RateComparison {
  /** Rate of the first over rate of the second; Infinity or 0 where one has no events, NaN where neither has. */
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  readonly pTwoSided: number;
  /** One-sided: chance of so many in the first, or more, if the rates were equal. */
  readonly pHigher: number;
  readonly pLower: number;
}

/**
 * Two Poisson rates compared exactly: given the total, the events of the first are binomial with its share of the
 * exposure (Przyborowski & Wilenski 1940, Biometrika 31:313–323); limits of the ratio by Clopper–Pearson.
 * Assumes that events come independently; bursts make p too small, so count bursts, not events.
 *
 * @param confidence Two-sided.
 * @returns All NaN where an exposure is not above 0 or events are below 0; p = 1 and 0 … Infinity for no events.
 *   Never throws. Cost: number of events.
 */
export function compareRates(first: Rate, second: Rate, confidence = 0.95): RateComparison {
  const total = first.events + second.events;
  const isProper = first.exposure > 0 && second.exposure > 0 && first.events >= 0 && second.events >= 0;
  if (!isProper) return { ratio: NaN, low: NaN, high: NaN, pTwoSided: NaN, pHigher: NaN, pLower: NaN };
  const tails = binomialTest(first.events, total, first.exposure / (first.exposure + second.exposure));
  const limits = clopperPearson(first.events, total, confidence);
  const ratioOf = (share: number) => ((share / (1 - share)) * second.exposure) / first.exposure;
  return {
    ratio: ratioOf(first.events / total),
    low: ratioOf(limits.low),
    high: ratioOf(limits.high),
    pTwoSided: tails.twoSided,
    pHigher: tails.atLeast,
    pLower: tails.atMost,
  };
}
