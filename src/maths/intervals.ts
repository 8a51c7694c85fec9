import { firstPlaceFrom } from './first-place.js';

/** Half open: holds `start`, does not hold `end`. Any one unit throughout. */
export interface Interval {
  readonly start: number;
  readonly end: number;
}

/**
 * The same ground as ascending intervals that neither overlap nor touch.
 *
 * @param intervals Any order; those with no length or a NaN are dropped.
 * @param bridge Gaps of at most this length are closed as well; 0 joins only what touches.
 * @returns New intervals. Never throws, never changes its input. Cost n·log n.
 */
export function mergeIntervals(intervals: Iterable<Interval>, bridge = 0): Interval[] {
  return mergeByStart(
    [...intervals].filter(({ start, end }) => end > start).sort((a, b) => a.start - b.start),
    bridge,
  );
}

/** As `mergeIntervals` for those that come by start: none of them is kept, so there may be very many. Cost n. */
export function mergeByStart(intervals: Iterable<Interval>, bridge = 0): Interval[] {
  const merged: { start: number; end: number }[] = [];
  let last: { start: number; end: number } | null = null;
  for (const { start, end } of intervals) {
    if (!(end > start)) continue;
    if (last && start - last.end <= bridge) {
      last.end = Math.max(last.end, end);
      continue;
    }
    last = { start, end };
    merged.push(last);
  }
  return merged;
}

/** The ground that both cover, merged. Never throws. Cost n·log n. */
export function intersectIntervals(a: Iterable<Interval>, b: Iterable<Interval>): Interval[] {
  const left = mergeIntervals(a);
  const right = mergeIntervals(b);
  const shared: Interval[] = [];
  for (let i = 0, j = 0; i < left.length && j < right.length;) {
    const start = Math.max(left[i]!.start, right[j]!.start);
    const end = Math.min(left[i]!.end, right[j]!.end);
    if (end > start) shared.push({ start, end });
    if (left[i]!.end < right[j]!.end) i++;
    else j++;
  }
  return shared;
}

/** The ground of `from` that `taken` does not cover, merged. Never throws. Cost n·log n. */
export function subtractIntervals(from: Iterable<Interval>, taken: Iterable<Interval>): Interval[] {
  const holes = mergeIntervals(taken);
  const left: Interval[] = [];
  let next = 0;
  for (const { start, end } of mergeIntervals(from)) {
    let at = start;
    while (next < holes.length && holes[next]!.end <= at) next++;
    for (let i = next; i < holes.length && holes[i]!.start < end; i++) {
      if (holes[i]!.start > at) left.push({ start: at, end: holes[i]!.start });
      at = Math.max(at, holes[i]!.end);
    }
    if (at < end) left.push({ start: at, end });
  }
  return left;
}

/** Length of the ground covered; what overlaps counts once. 0 for none. Never throws. Cost n·log n. */
export function totalLength(intervals: Iterable<Interval>): number {
  return lengthOf(mergeIntervals(intervals));
}

/**
 * As `totalLength` for very many intervals that come by start: none is made an object of.
 *
 * @param starts Ascending. @param endAt The end of the one at a place.
 */
export function coveredLength(starts: Float64Array, endAt: (place: number) => number): number {
  let length = 0;
  let coveredTo = -Infinity;
  for (let place = 0; place < starts.length; place++) {
    const end = endAt(place);
    const start = Math.max(starts[place]!, coveredTo);
    if (!(end > start)) continue;
    length = length + end - start;
    coveredTo = end;
  }
  return length;
}

/** Length of intervals that do not overlap. */
export function lengthOf(merged: Iterable<Interval>): number {
  let length = 0;
  for (const { start, end } of merged) length = length + end - start;
  return length;
}

/**
 * Whether a point lies in one of the intervals.
 *
 * @param merged Ascending and apart, as `mergeIntervals` returns them. Cost log n.
 */
export function isCovered(merged: readonly Interval[], point: number): boolean {
  let low = 0;
  let high = merged.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (merged[middle]!.end <= point) low = middle + 1;
    else high = middle;
  }
  return low < merged.length && merged[low]!.start <= point;
}

/**
 * Asks of spans, both ends included, whether they come as near as that to any of some others.
 *
 * @param others Any order; those with a NaN are dropped, Infinity is an end that is not known yet.
 * @returns A function that costs log n. Never throws.
 */
export function nearAny(others: readonly Interval[], tolerance: number): (span: Interval) => boolean {
  const inOrder = others.filter(({ start, end }) => end >= start).sort((a, b) => a.start - b.start);
  const starts = inOrder.map(({ start }) => start - tolerance);
  let latest = -Infinity; // end so far
  const latestEnds = inOrder.map(({ end }) => (latest = Math.max(latest, end + tolerance)));
  return ({ start, end }) => {
    const place = firstPlaceFrom(latestEnds, start); // the first that reaches the span, by itself or one before it
    return place < starts.length && starts[place]! <= end;
  };
}
