import { usablePlaces, type Numbers } from './finite.js';
import { splitDistance } from './split-tail.js';
import { isVaried, prefixSums, resolvedSquares, type StretchSums } from './stretch-sums.js';

export interface ChangeInMean {
  /** Index of the first value after the change, in the array given; −1 for none found. */
  readonly index: number;
  /** Confidence limits of that index. */
  readonly indexLow: number;
  readonly indexHigh: number;
  readonly meanBefore: number;
  readonly meanAfter: number;
  /** Residual sum of squares without and with the change. */
  readonly squaresWithout: number;
  readonly squaresWith: number;
  /**
   * BIC without minus BIC with the change (two more parameters: a mean and a place); above 0 speaks for a change,
   * above 10 strongly (Kass & Raftery 1995, JASA 90:773–795, from memory). Always finite: a perfect fit counts as
   * leaving what arithmetic cannot resolve.
   */
  readonly bicGain: number;
  /** Values used. */
  readonly count: number;
}

export interface ChangeInMeanOptions {
  /** Fewest usable values on each side, default 3. */
  readonly leastLength?: number;
  /** Two-sided confidence of the index, default 0.95. */
  readonly confidence?: number;
}

/** Keeps the interval formula finite where one side does not scatter at all (coarse resolution does that). */
const LEAST_VARIANCE_SHARE = 1e-6;

/**
 * The one place at which a change of mean fits best by least squares, with an interval for the place that allows
 * each side its own scatter (Bai 1997; Zeileis, Kleiber, Krämer & Hornik 2003, Comput. Stat. Data Anal. 44:109–123).
 * BIC as there: n·(log(2π·RSS/n) + 1) + log(n)·2·(changes + 1). Assumes independent values.
 *
 * @param values In time order; NaN and ±Infinity are skipped, their places still count in the index.
 * @returns Index −1 and NaN for fewer than 2·leastLength usable values or no change at all. Never throws. One pass over prefix sums.
 */
export function changeInMean(values: Numbers, options: ChangeInMeanOptions = {}): ChangeInMean {
  const { leastLength = 3, confidence = 0.95 } = options;
  const places = usablePlaces(values);
  const count = places.length;
  const sums = prefixSums(values, places);
  const squaresWithout = sums.squares(0, count);
  const split = bestSplit(sums, count, Math.max(1, leastLength));
  if (split < 0 || !isVaried(squaresWithout, values)) return { ...nothingFound, squaresWithout, count };
  const before = { mean: sums.mean(0, split), squares: sums.squares(0, split) };
  const after = { mean: sums.mean(split, count), squares: sums.squares(split, count) };
  const squaresWith = before.squares + after.squares;
  const leastVariance = (LEAST_VARIANCE_SHARE * Math.max(squaresWith, LEAST_VARIANCE_SHARE * squaresWithout)) / count;
  const sdBefore = Math.sqrt(Math.max(before.squares / split, leastVariance));
  const sdAfter = Math.sqrt(Math.max(after.squares / (count - split), leastVariance));
  const jump = Math.abs(after.mean - before.mean);
  const share = (1 - confidence) / 2;
  // The found place strays beyond the true one into the side after it, so that side's scatter sets the lower limit.
  const low = Math.max(1, Math.floor(split - splitDistance(share, sdAfter, sdBefore, jump)));
  const high = Math.min(count - 1, Math.ceil(split + splitDistance(share, sdBefore, sdAfter, jump)));
  return {
    index: places[split]!,
    indexLow: places[low]!,
    indexHigh: places[high]!,
    meanBefore: before.mean,
    meanAfter: after.mean,
    squaresWithout,
    squaresWith,
    bicGain: count * Math.log(squaresWithout / resolvedSquares(squaresWith, squaresWithout)) - 2 * Math.log(count),
    count,
  };
}

const nothingFound = {
  index: -1,
  indexLow: -1,
  indexHigh: -1,
  meanBefore: NaN,
  meanAfter: NaN,
  squaresWith: NaN,
  bicGain: NaN,
};

function bestSplit(sums: StretchSums, count: number, leastLength: number): number {
  let best = -1;
  let least = Infinity;
  for (let split = leastLength; split <= count - leastLength; split++) {
    const squares = sums.squares(0, split) + sums.squares(split, count);
    if (squares < least) [least, best] = [squares, split];
  }
  return best;
}
