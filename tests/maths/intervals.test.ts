import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  coveredLength,
  intersectIntervals,
  isCovered,
  mergeByStart,
  mergeIntervals,
  nearAny,
  subtractIntervals,
  totalLength,
  type Interval,
} from '../../src/maths/intervals.js';

const HORIZON = 30;
const interval = fc
  .tuple(fc.integer({ min: 0, max: HORIZON }), fc.integer({ min: 0, max: 8 }))
  .map(([start, length]): Interval => ({ start, end: start + length }));
const several = fc.array(interval, { maxLength: 8 });

/** The whole numbers that the intervals hold: the plain meaning to check against. */
function held(intervals: readonly Interval[]): Set<number> {
  return new Set(intervals.flatMap(({ start, end }) => Array.from({ length: end - start }, (_, i) => start + i)));
}

test('merging keeps the ground and leaves gaps between', () => {
  fc.assert(
    fc.property(several, (given) => {
      const merged = mergeIntervals(given);
      expect(held(merged)).toEqual(held([...given].sort((a, b) => a.start - b.start)));
      for (const [i, { start }] of merged.entries()) if (i > 0) expect(start).toBeGreaterThan(merged[i - 1]!.end);
      expect(totalLength(given)).toBe(held(given).size);
    }),
  );
});

test('both, and the first without the second, add up to the first', () => {
  fc.assert(
    fc.property(several, several, (a, b) => {
      const inB = held(b);
      const both = held(intersectIntervals(a, b));
      const rest = held(subtractIntervals(a, b));
      expect([...both].sort()).toEqual([...held(a)].filter((at) => inB.has(at)).sort());
      expect([...rest].sort()).toEqual([...held(a)].filter((at) => !inB.has(at)).sort());
      expect(both.size + rest.size).toBe(totalLength(a));
    }),
  );
});

test('a point is covered when an interval holds it; the end is not held', () => {
  fc.assert(
    fc.property(several, fc.integer({ min: -1, max: HORIZON + 9 }), (given, point) => {
      expect(isCovered(mergeIntervals(given), point)).toBe(held(given).has(point));
    }),
  );
});

test('intervals by start merge in one pass to what any order merges to', () => {
  fc.assert(
    fc.property(several, (given) => {
      const byStart = [...given].sort((a, b) => a.start - b.start);
      expect(mergeByStart(byStart.values(), 1)).toEqual(mergeIntervals(given, 1));
    }),
  );
});

test('length in one pass is the length of the merged ground', () => {
  fc.assert(
    fc.property(several, (given) => {
      const byStart = [...given].sort((a, b) => a.start - b.start);
      const starts = Float64Array.from(byStart, ({ start }) => start);
      expect(coveredLength(starts, (i) => byStart[i]!.end)).toBe(totalLength(given));
    }),
  );
});

test('short gaps are bridged when asked', () => {
  const given = [
    { start: 0, end: 5 },
    { start: 7, end: 9 },
    { start: 20, end: 21 },
  ];
  expect(mergeIntervals(given, 2)).toEqual([
    { start: 0, end: 9 },
    { start: 20, end: 21 },
  ]);
  expect(mergeIntervals(given, 1)).toHaveLength(3);
});

test('what has no length or no number is dropped', () => {
  expect(
    mergeIntervals([
      { start: 3, end: 3 },
      { start: 5, end: 4 },
      { start: NaN, end: 9 },
    ]),
  ).toEqual([]);
  expect(totalLength([])).toBe(0);
});

test('tells whether a span comes near any of some others', () => {
  fc.assert(
    fc.property(several, interval, fc.integer({ min: 0, max: 3 }), (others, span, tolerance) => {
      const isNear = others.some(({ start, end }) => span.start <= end + tolerance && span.end >= start - tolerance);
      expect(nearAny(others, tolerance)(span)).toBe(isNear);
    }),
  );
  expect(nearAny([{ start: 5, end: Infinity }], 1)({ start: 100, end: 101 })).toBe(true);
  expect(nearAny([{ start: 5, end: NaN }], 1)({ start: 5, end: 6 })).toBe(false);
});
