import { expect, test } from 'vitest';
import { theilSen } from '../../src/maths/theil-sen.js';
import { Random } from '../make/random.js';
import { NILE } from './published-data.js';

// Helsel & Hirsch, Statistical Methods in Water Resources, chapter on the Kendall–Theil line; from memory.
test('one wild point among seven does not move the line', () => {
  const line = theilSen([1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 16, 7]);
  expect(line.slope).toBe(1);
  expect(line.intercept).toBe(0);
});

test('slopes of published series (computed with scipy)', () => {
  const values = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
  expect(
    theilSen(
      values.map((_, i) => i),
      values,
    ).slope,
  ).toBeCloseTo(0.566667, 6);
  expect(
    theilSen(
      NILE.map((_, i) => i),
      NILE,
    ).slope,
  ).toBeCloseTo(-2.6, 10);
});

test('the 90 % limits hold the true slope about 9 times in 10', () => {
  const random = new Random(4);
  const x = Array.from({ length: 24 }, (_, i) => i);
  let held = 0;
  for (let round = 0; round < 400; round++) {
    const { low, high } = theilSen(
      x,
      x.map((at) => 0.3 * at + random.gauss()),
      { confidence: 0.9 },
    );
    if (low <= 0.3 && 0.3 <= high) held++;
  }
  expect(held / 400).toBeGreaterThan(0.86); // binomial sd 0.015
  expect(held / 400).toBeLessThan(0.95);
});

test('many points are thinned evenly and say so', () => {
  const x = Array.from({ length: 5000 }, (_, i) => i);
  const line = theilSen(
    x,
    x.map((at) => 7 - 2 * at),
    { mostPoints: 100 },
  );
  expect(line).toMatchObject({ slope: -2, intercept: 7, count: 5000, used: 100 });
});

test('too few points', () => {
  expect(theilSen([1], [1]).slope).toBeNaN();
  expect(theilSen([2, 2], [1, 5]).slope).toBeNaN();
  const two = theilSen([1, 2], [1, 3]);
  expect([two.slope, two.low, two.high]).toEqual([2, -Infinity, Infinity]);
});
