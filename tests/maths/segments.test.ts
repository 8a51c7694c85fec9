import fc from 'fast-check';
import { expect, test } from 'vitest';
import { segmentsOfMean } from '../../src/maths/segments.js';
import { Random } from '../make/random.js';
import { NILE } from './published-data.js';

test('the Nile has one change, in 1898 (Cobb 1978; Zeileis et al. 2003)', () => {
  expect(segmentsOfMean(NILE).map(({ from }) => 1871 + from)).toEqual([1871, 1899]);
});

test('finds the steps of a made series, over a gap', () => {
  const random = new Random(8);
  const values = Array.from({ length: 300 }, (_, i) => (i < 100 ? 0 : i < 180 ? 6 : 2) + random.gauss());
  values.fill(NaN, 130, 140);
  const segments = segmentsOfMean(values);
  expect(segments.map(({ from }) => from)).toHaveLength(3);
  expect(Math.abs(segments[1]!.from - 100)).toBeLessThan(3);
  expect(Math.abs(segments[2]!.from - 180)).toBeLessThan(3);
  expect(segments[1]!.count).toBe(segments[1]!.to - segments[1]!.from - 10);
  expect(segments.at(-1)!.to).toBe(300);
});

test('no shorter search finds a cheaper split', () => {
  const values = fc.array(fc.integer({ min: 0, max: 8 }), { minLength: 4, maxLength: 16 });
  fc.assert(
    fc.property(
      values,
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 0, max: 12 }),
      (given, leastLength, penalty) => {
        const found = segmentsOfMean(given, { leastLength, noise: 1, penalty });
        const total = found.reduce((sum, { from, to }) => sum + squares(given.slice(from, to)) + penalty, -penalty);
        expect(total).toBeCloseTo(cheapest(given, leastLength, penalty), 6);
        for (const { count } of found) expect(count).toBeGreaterThanOrEqual(Math.min(leastLength, given.length));
      },
    ),
  );
});

test('noise alone is mostly one stretch', () => {
  const random = new Random(9);
  const counts = Array.from(
    { length: 50 },
    () => segmentsOfMean(Array.from({ length: 200 }, () => random.gauss())).length,
  );
  expect(counts.filter((count) => count === 1).length).toBeGreaterThan(40);
});

test('coarsely rounded readings: a step is found, rounding is not', () => {
  const values = Array.from({ length: 90 }, (_, i) => (i < 40 ? 180 : 182) + (i % 9 === 4 ? 0.1 : 0));
  expect(segmentsOfMean(values).map(({ from }) => from)).toEqual([0, 40]);
});

test('little or no data', () => {
  expect(segmentsOfMean([])).toEqual([]);
  expect(segmentsOfMean([NaN, 5])).toEqual([{ from: 1, to: 2, mean: 5, count: 1 }]);
  expect(segmentsOfMean([4, 4, 4, 4, 4, 4, 4])).toHaveLength(1);
});

function squares(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

/** Every split tried. A series too short for two segments is one. */
function cheapest(values: readonly number[], leastLength: number, penalty: number): number {
  let least = squares(values);
  for (let cut = leastLength; cut <= values.length - leastLength; cut++) {
    least = Math.min(
      least,
      squares(values.slice(0, cut)) + penalty + cheapest(values.slice(cut), leastLength, penalty),
    );
  }
  return least;
}
