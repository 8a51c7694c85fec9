import { expect, test } from 'vitest';
import { fitLine } from '../../src/maths/line-fit.js';
import { NORRIS } from './published-data.js';

test('reaches the certified figures of NIST StRD Norris', () => {
  const fit = fitLine(NORRIS.x, NORRIS.y);
  expect(fit.count).toBe(36);
  for (const key of ['slope', 'intercept', 'slopeError', 'interceptError', 'residualSd', 'residualSquares'] as const) {
    expect(Math.abs(fit[key] / NORRIS[key] - 1), key).toBeLessThan(1e-11);
  }
  expect(fit.rSquared).toBeCloseTo(NORRIS.rSquared, 13);
});

test('skips gaps and works far from zero, as clock times are', () => {
  const x = [0, 1, 2, 3, 4].map((minute) => 1.7e12 + minute * 60_000);
  const fit = fitLine(x, [1, 2, NaN, 4, 5]);
  expect(fit.slope * 60_000).toBeCloseTo(1, 9);
  expect(fit.count).toBe(4);
});

test('one point has no slope, two have no error', () => {
  expect(fitLine([1], [2]).slope).toBeNaN();
  expect(fitLine([], []).slope).toBeNaN();
  expect(fitLine([3, 3], [1, 2]).slope).toBeNaN();
  const two = fitLine([0, 1], [5, 7]);
  expect([two.slope, two.intercept]).toEqual([2, 5]);
  expect(two.slopeError).toBeNaN();
});
