import fc from 'fast-check';
import { expect, test } from 'vitest';
import { logSumExp, softmax } from '../../src/maths/log-odds.js';

test('shares sum to 1 however large the terms', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1 }), (terms) => {
      expect(softmax(terms).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    }),
  );
});

test('two equal terms share evenly; log 2 apart is two to one', () => {
  expect(softmax([1000, 1000])).toEqual([0.5, 0.5]);
  expect(softmax([Math.log(2), 0])[0]).toBeCloseTo(2 / 3, 12);
  expect(logSumExp([-1000, -1000])).toBeCloseTo(-1000 + Math.log(2), 9);
});

test('nothing, and what is no number', () => {
  expect(logSumExp([])).toBe(-Infinity);
  expect(softmax([])).toEqual([]);
  expect(softmax([0, NaN])).toEqual([NaN, NaN]);
});
