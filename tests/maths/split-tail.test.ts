import { expect, test } from 'vitest';
import { splitDistance, splitTail } from '../../src/maths/split-tail.js';

// Quantiles of the place of the maximum of W(s) − |s|/2: 7.7 and 11.0 for 90 and 95 % (Bai 1997, from memory; Yao 1987).
test('equal sides: the published quantiles', () => {
  expect(splitDistance(0.05, 1, 1, 1)).toBeCloseTo(7.7, 1);
  expect(splitDistance(0.025, 1, 1, 1)).toBeCloseTo(11.0, 1);
});

test('equal sides: the tail is the integral of the density of Yao 1987', () => {
  const normalTail = (z: number) => splitNormalTail(z);
  const density = (t: number) =>
    1.5 * Math.exp(t) * normalTail(1.5 * Math.sqrt(t)) - 0.5 * normalTail(0.5 * Math.sqrt(t));
  let integral = 0;
  const step = 0.001;
  for (let i = 0; i < 2000; i++) integral += density(2 + (i + 0.5) * step) * step;
  expect(splitTail(2, 1, 1, 1) - splitTail(4, 1, 1, 1)).toBeCloseTo(integral, 6);
});

test('the two sides share all the chance between them; the noisier side has more', () => {
  for (const [a, b] of [
    [1, 1],
    [1, 3],
    [0.2, 5],
  ] as const) {
    expect(splitTail(0, a, b, 1.7) + splitTail(0, b, a, 1.7)).toBeCloseTo(1, 9);
    if (a < b) expect(splitTail(0, b, a, 1)).toBeGreaterThan(0.5);
  }
});

test('a jump twice as large is placed four times as sharply', () => {
  expect(splitDistance(0.025, 1, 2, 2)).toBeCloseTo(splitDistance(0.025, 1, 2, 1) / 4, 6);
});

test('stays a probability far out', () => {
  for (const distance of [10, 1e3, 1e5]) expect(splitTail(distance, 1, 0.01, 1)).toBeGreaterThanOrEqual(0);
  expect(splitTail(1e5, 1, 0.01, 1)).toBeLessThan(1e-9);
});

/** Upper tail of the standard normal by its own integral, apart from the library. */
function splitNormalTail(z: number): number {
  let sum = 0;
  const step = 0.002;
  for (let x = z; x < z + 9; x += step) sum += Math.exp(-0.5 * (x + step / 2) ** 2) * step;
  return sum / Math.sqrt(2 * Math.PI);
}
