import { expect, test } from 'vitest';
import { gaussLegendre } from '../../src/maths/gauss-legendre.js';

test('nodes of the table (Abramowitz & Stegun, table 25.4, n = 3)', () => {
  const { at, weight } = gaussLegendre(3, -1, 1);
  expect(at[2]).toBeCloseTo(0.774596669241483, 14);
  expect([weight[0], weight[1]].map((w) => w!.toFixed(12))).toEqual(['0.555555555556', '0.888888888889']);
});

test('exact for polynomials up to degree 2n − 1, on any range', () => {
  const { at, weight } = gaussLegendre(5, 1, 3);
  const integral = at.reduce((sum, x, i) => sum + weight[i]! * x ** 9, 0);
  expect(integral / ((3 ** 10 - 1) / 10)).toBeCloseTo(1, 12);
});
