import { finiteValues, usablePlaces, type Numbers } from './finite.js';

export interface Pettitt {
  /** max |U|. */
  readonly k: number;
  /** Index of the first value after the change, in the array given; −1 for fewer than 2 usable values. */
  readonly index: number;
  /** 2·exp(−6K²/(n³ + n²)), at most 1; good below about 0.5. */
  readonly pTwoSided: number;
}

/**
 * Pettitt's rank test for a change of level at an unknown place (Pettitt 1979, Applied Statistics 28:126–135).
 * Says nothing of the size and does not care for outliers. Assumes independent values.
 *
 * @param values In time order; NaN and ±Infinity are skipped, their places still count in the index.
 * @returns NaN for fewer than 2 usable values. Never throws. Cost n·log n.
 */
export function pettitt(values: Numbers): Pettitt {
  const kept = finiteValues(values);
  const n = kept.length;
  if (n < 2) return { k: NaN, index: -1, pTwoSided: NaN };
  const ranks = middleRanks(kept);
  let sum = 0;
  let k = -1;
  let split = 0;
  for (let before = 1; before < n; before++) {
    sum += ranks[before - 1]!;
    const u = Math.abs(2 * sum - before * (n + 1));
    if (u > k) [k, split] = [u, before];
  }
  const pTwoSided = Math.min(1, 2 * Math.exp((-6 * k * k) / (n ** 3 + n ** 2)));
  return { k, index: usablePlaces(values)[split]!, pTwoSided };
}

/** Ranks from 1; equal values share the mean of theirs. */
function middleRanks(values: Float64Array): Float64Array {
  const order = Array.from(values.keys()).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Float64Array(values.length);
  for (let from = 0; from < order.length;) {
    let to = from;
    while (to < order.length && values[order[to]!] === values[order[from]!]) to++;
    for (let i = from; i < to; i++) ranks[order[i]!] = (from + 1 + to) / 2;
    from = to;
  }
  return ranks;
}
