import { usablePlaces, type Numbers } from './finite.js';
import { noiseSd } from './spread.js';
import { prefixSums } from './stretch-sums.js';

export interface Segment {
  /** Index of the first value of the segment and of the first value after it, in the array given. */
  readonly from: number;
  readonly to: number;
  readonly mean: number;
  /** Usable values in it. */
  readonly count: number;
}

export interface SegmentOptions {
  /** Fewest usable values in a segment, default 3. */
  readonly leastLength?: number;
  /** Standard deviation of the noise; default `noiseSd` of the values. */
  readonly noise?: number;
  /** What one more change must gain in squared deviations over noise²; default 2·log(n): BIC, a mean and a place each. */
  readonly penalty?: number;
}

/**
 * Stretches of constant mean: the split with the least Σ squared deviations/noise² + penalty per change, found exactly
 * by pruned dynamic programming (PELT: Killick, Fearnhead & Eckley 2012, JASA 107:1590–1598; a start is dropped only
 * once a segment of the least length fits behind the place that beats it). Assumes independent noise.
 *
 * @param values In time order; NaN and ±Infinity are skipped, their places still count in the indices.
 * @returns Segments in order, covering first to last usable value; one segment where the noise is 0 and cannot be told,
 *   or where the values are too few; none for no data. Never throws.
 *   Cost about n where changes are frequent, n² where there are none: thin 10 000 values and more before.
 */
export function segmentsOfMean(values: Numbers, options: SegmentOptions = {}): Segment[] {
  const places = usablePlaces(values);
  const n = places.length;
  if (n === 0) return [];
  const { leastLength = 3, noise = noiseSd(values), penalty = 2 * Math.log(n) } = options;
  const sums = prefixSums(values, places);
  const cost = (from: number, to: number) => sums.squares(from, to) / (noise * noise);
  const starts = noise > 0 && n >= 2 * leastLength ? bestStarts(n, cost, penalty, Math.max(1, leastLength)) : [0];
  return starts.map((from, k) => {
    const to = starts[k + 1] ?? n;
    const after = to < n ? places[to]! : places[n - 1]! + 1;
    return { from: places[from]!, to: after, mean: sums.mean(from, to), count: to - from };
  });
}

function bestStarts(n: number, cost: (from: number, to: number) => number, penalty: number, least: number): number[] {
  const total = new Float64Array(n + 1).fill(Infinity);
  const previous = new Int32Array(n + 1);
  total[0] = -penalty;
  const candidates = new Int32Array(n + 1); // starts still worth trying, the first `alive` places
  const dropFrom = new Float64Array(n + 1).fill(Infinity); // by start: end from which it is no longer tried
  let alive = 0;
  for (let end = least; end <= n; end++) {
    if (end === least || end >= 2 * least) candidates[alive++] = end - least;
    alive = keepAlive(candidates, alive, dropFrom, end);
    const costs = new Float64Array(alive);
    for (let k = 0; k < alive; k++) {
      const start = candidates[k]!;
      costs[k] = total[start]! + cost(start, end);
      if (costs[k]! + penalty < total[end]!) [total[end], previous[end]] = [costs[k]! + penalty, start];
    }
    for (let k = 0; k < alive; k++) {
      const start = candidates[k]!;
      if (costs[k]! > total[end]!) dropFrom[start] = Math.min(dropFrom[start]!, end + least);
    }
  }
  const starts: number[] = [];
  for (let end = n; end > 0; end = previous[end]!) starts.unshift(previous[end]!);
  return starts;
}

function keepAlive(candidates: Int32Array, alive: number, dropFrom: Float64Array, end: number): number {
  let kept = 0;
  for (let k = 0; k < alive; k++) {
    if (end < dropFrom[candidates[k]!]!) candidates[kept++] = candidates[k]!;
  }
  return kept;
}
