import { expect, test } from 'vitest';
import { normalCdf, normalDensity, normalTwoSidedP, zForConfidence } from '../../src/maths/normal.js';

test('table values (Abramowitz & Stegun, table 26.1)', () => {
  expect(normalCdf(1)).toBeCloseTo(0.841344746, 9);
  expect(normalCdf(-2)).toBeCloseTo(0.022750132, 9);
  expect(normalDensity(0)).toBeCloseTo(0.39894228, 8);
  expect(zForConfidence(0.95)).toBeCloseTo(1.95996398, 8);
});

test('both tails', () => {
  expect(normalTwoSidedP(-1.95996398)).toBeCloseTo(0.05, 8);
  expect(normalTwoSidedP(0)).toBe(1);
  expect(normalTwoSidedP(NaN)).toBeNaN();
});
