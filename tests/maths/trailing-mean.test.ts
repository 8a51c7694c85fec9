import { expect, test } from 'vitest';
import { trailingMean } from '../../src/maths/trailing-mean.js';

// Moving averages of order 3 of 1 to 6: arithmetic, by hand.
test('is the mean of the last places, fewer at the start', () => {
  expect([...trailingMean([1, 2, 3, 4, 5, 6], 3)]).toEqual([1, 1.5, 2, 3, 4, 5]);
});

test('leaves gaps out and has nothing to say of a gap alone', () => {
  expect([...trailingMean([NaN, 4, NaN, NaN, NaN, 8], 2)]).toEqual([NaN, 4, 4, NaN, NaN, 8]);
});
