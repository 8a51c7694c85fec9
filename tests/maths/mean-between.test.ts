import { expect, test } from 'vitest';
import { meanBetween } from '../../src/maths/mean-between.js';

// Arithmetic, by hand.
test('is the mean of the stretch, without what holds no number', () => {
  expect(meanBetween([9, 2, NaN, 4, 9], 1, 4)).toBe(3);
  expect(meanBetween(Float32Array.of(1, 2, 3), -5, 99)).toBe(2);
});

test('is NaN where there is no number', () => {
  expect(meanBetween([NaN, NaN], 0, 2)).toBeNaN();
  expect(meanBetween([1, 2], 1, 1)).toBeNaN();
});
