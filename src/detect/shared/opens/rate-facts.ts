import { compareRates, type Rate } from '../../../maths/exact-rates.js';

/** Stands for a ratio without end: no event at all on the other side. */
const LARGEST_RATIO = 999;

export interface RateFacts {
  readonly ratio: number;
  readonly lowRatio: number;
  /** Chance of so many events in the first part, or more, were the rates equal. */
  readonly higherPValue: number;
  /** Chance of so few events in the first part, or fewer, were the rates equal. */
  readonly lowerPValue: number;
}

/** Exact comparison of two Poisson rates, ratios kept finite (0 to 999). NaN where a side was never watched. */
export function rateFacts(first: Rate, second: Rate): RateFacts {
  const { ratio, low, pHigher, pLower } = compareRates(first, second);
  return {
    ratio: Math.min(LARGEST_RATIO, ratio),
    lowRatio: Math.min(LARGEST_RATIO, low),
    higherPValue: pHigher,
    lowerPValue: pLower,
  };
}
