import { expect, test } from 'vitest';
import { ewma } from '../../src/maths/ewma.js';

// NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4 EWMA Control Charts.
const values = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
  52.1,
];
const published = [
  50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38, 49.92, 50.73,
  51.23, 51.94, 51.99,
];
const handbook = { start: 50, weight: 0.3, sd: 2.0539, limitSds: 3 };

test('the NIST handbook chart', () => {
  const chart = ewma(values, handbook);
  for (const [i, average] of published.entries()) expect(Math.abs(chart.average[i]! - average)).toBeLessThan(0.0051);
  expect(chart.upper).toBeCloseTo(52.5884, 4);
  expect(Math.abs(chart.lower - 47.4115)).toBeLessThan(0.0001); // printed cut off, not rounded
  expect(chart.firstSignal).toBe(-1);
});

test('signals outside the limits and stays where there is a gap', () => {
  const chart = ewma([50, NaN, 70], handbook);
  expect([chart.average[1], chart.firstSignal]).toEqual([50, 2]);
});
