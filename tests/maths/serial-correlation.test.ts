import { expect, test } from 'vitest';
import { mean } from '../../src/maths/location.js';
import { effectiveCount, lagOneCorrelation } from '../../src/maths/serial-correlation.js';
import { Random } from '../make/random.js';

/** Autoregressive series of first order. */
function series(random: Random, length: number, r: number): number[] {
  let value = random.gauss() / Math.sqrt(1 - r * r);
  return Array.from({ length }, () => (value = r * value + random.gauss()));
}

test('worked by hand: 1 2 3 4 5', () => {
  // deviations −2 −1 0 1 2: products 2 + 0 + 0 + 2 over squares 10
  expect(lagOneCorrelation([1, 2, 3, 4, 5])).toBeCloseTo(0.4, 12);
});

test('finds the correlation of a made series', () => {
  expect(lagOneCorrelation(series(new Random(17), 5000, 0.7))).toBeCloseTo(0.7, 1);
});

test('the effective count gives the real scatter of the mean', () => {
  const random = new Random(18);
  const means = Array.from({ length: 600 }, () => mean(series(random, 200, 0.6)));
  const variance = means.reduce((sum, value) => sum + value * value, 0) / means.length;
  const expected = 1 / (1 - 0.36) / effectiveCount(200, 0.6);
  expect(variance / expected).toBeGreaterThan(0.85);
  expect(variance / expected).toBeLessThan(1.15);
});

test('little data, no gain from a zigzag', () => {
  expect(lagOneCorrelation([1, 2])).toBeNaN();
  expect(lagOneCorrelation([3, 3, 3])).toBeNaN();
  expect([effectiveCount(10, -0.5), effectiveCount(10, NaN), effectiveCount(10, 0.99)]).toEqual([10, 10, 1]);
});
