import { expect, test } from 'vitest';
import { cusum, likelyStart } from '../../src/maths/cusum.js';
import { firstSignal } from './first-signal.js';

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3 CUSUM Control Charts.
const groupMeans = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15, 328.325,
  327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const handbook = { target: 325, slack: 0.3175 };
const limit = 4.1959;
const publishedHigh = [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04];
const publishedLow = [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0];

test('the NIST handbook chart', () => {
  const chart = cusum(groupMeans, handbook);
  for (const [i, high] of publishedHigh.entries()) expect(Math.abs(chart.high[i]! - high)).toBeLessThan(0.006);
  for (const [i, low] of publishedLow.entries()) expect(Math.abs(chart.low[i]! - low)).toBeLessThan(0.006);
  expect(firstSignal(chart, limit) + 1).toBe(14);
  expect(chart.high[13]!).toBeGreaterThan(limit);
  expect(likelyStart(chart.high, 13) + 1).toBe(13);
});

// Montgomery & Runger, Applied Statistics and Probability for Engineers, 3rd ed., data of Table 16-7, target 99;
// with K = 1 the largest sums are 2.0 above and 3.2 below (worked from the definition).
test('the concentration data', () => {
  const concentration = [
    102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0, 96.7, 100.3, 101.4,
    97.2, 101.0,
  ];
  const plain = cusum(concentration, { target: 99, slack: 1 });
  expect(Math.max(...plain.high)).toBeCloseTo(2.0, 9);
  expect(Math.max(...plain.low)).toBeCloseTo(3.2, 9);
  expect(firstSignal(plain, 10)).toBe(-1);
});

test('a fall signals downwards', () => {
  const chart = cusum(
    groupMeans.map((mean) => 650 - mean),
    handbook,
  );
  expect(firstSignal(chart, limit) + 1).toBe(14);
  expect(chart.low[13]!).toBeGreaterThan(limit);
  expect(chart.high[13]).toBe(0);
});

test('a gap changes nothing', () => {
  const values = [...groupMeans.slice(0, 13), NaN, ...groupMeans.slice(13)];
  const chart = cusum(values, handbook);
  expect(firstSignal(chart, limit) + 1).toBe(15);
  expect(chart.high[13]).toBe(chart.high[12]);
  expect(chart.high.at(-1)).toBeCloseTo(19.035, 9);
});

test('no values, no signal', () => {
  expect(firstSignal(cusum([], handbook), limit)).toBe(-1);
});
