import { expect, test } from 'vitest';
import { median, quantile } from '../../src/maths/quantile.js';

// Type 7 at share p lies at rank 1 + (n − 1)·p: Hyndman & Fan 1996, definition 7. Expected values worked by that rule.
test('interpolates between order statistics as type 7 does', () => {
  const values = [40, 10, 30, 20];
  expect(quantile(values, 0.25)).toBe(17.5);
  expect(quantile(values, 0.1)).toBeCloseTo(13, 12);
  expect(quantile(values, 0)).toBe(10);
  expect(quantile(values, 1)).toBe(40);
});

test('skips gaps', () => {
  expect(median(Float64Array.of(NaN, 5, 1, NaN, 3))).toBe(3);
  expect(median([4, NaN, 1])).toBe(2.5);
});

test('answers NaN for no data and for a share that is none', () => {
  expect(median([])).toBeNaN();
  expect(median([NaN])).toBeNaN();
  expect(quantile([1, 2], 1.1)).toBeNaN();
  expect(quantile([1, 2], NaN)).toBeNaN();
});

test('owes nothing to the numbers of the call before, nor changes its own', () => {
  const values = Float64Array.of(9, 7, 8, NaN, 5);
  expect(median(values)).toBe(7.5);
  expect(values).toEqual(Float64Array.of(9, 7, 8, NaN, 5));
  expect(median([100])).toBe(100);
  expect(median(Float32Array.of(3, NaN))).toBe(3);
  expect(quantile([2, 1], 1)).toBe(2);
});
