import { sampleStandardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { momentsOf, populationSd, sampleSd } from '../../src/maths/moments.js';

test('agrees with another library', () => {
  const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  expect(sampleSd(momentsOf(values))).toBeCloseTo(sampleStandardDeviation(values), 10);
});

test('keeps its figures on a high level, where sums of squares lose them', () => {
  const moments = momentsOf([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16]);
  expect(sampleSd(moments) ** 2).toBeCloseTo(30, 9); // 4 7 13 16: squares 36 + 9 + 9 + 36 over 3
});

test('equal values have no spread at all', () => {
  expect(populationSd(momentsOf(Array.from({ length: 7 }, () => 0.1)))).toBe(0);
});

test('little data', () => {
  expect(momentsOf([]).mean).toBeNaN();
  expect(sampleSd(momentsOf([NaN, 3]))).toBeNaN();
  expect(populationSd(momentsOf([3]))).toBe(0);
  expect(populationSd(momentsOf([]))).toBeNaN();
});
