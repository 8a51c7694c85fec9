import fc from 'fast-check';
import { expect, test } from 'vitest';
import { kendallS, kendallVariance } from '../../src/maths/kendall.js';
import { mannKendall } from '../../src/maths/mann-kendall.js';
import { NILE } from './published-data.js';

// J. Little, College of the Holy Cross, course note "A Mann-Kendall Example (By Hand)".
test('the 14 values worked by hand', () => {
  const values = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
  const trend = mannKendall(values);
  expect(trend.s).toBe(54);
  expect(trend.variance).toBeCloseTo((14 * 13 * 33 - 2 * 1 * 9) / 18, 10);
  expect(trend.z).toBeCloseTo(2.9058, 4);
  expect(trend.pTwoSided / 2).toBeCloseTo(0.0018, 4);
});

test('the Nile falls (figures computed with scipy from the published data)', () => {
  const trend = mannKendall(NILE);
  expect(trend.s).toBe(-1387);
  expect(trend.variance).toBeCloseTo(112728.333333, 5);
  expect(trend.z).toBeCloseTo(-4.128067, 6);
});

test('S counts pairs, ties none', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 6 }), { maxLength: 25 }), (values) => {
      const pairs = values.flatMap((a, i) => values.slice(i + 1).map((b) => Math.sign(b - a)));
      expect(kendallS(values)).toBe(pairs.reduce<number>((sum, sign) => sum + sign, 0));
    }),
  );
});

test('the variance is that of S over all orders, ties in both included', () => {
  const x = [1, 1, 2, 3, 3];
  const y = [1, 2, 2, 2, 5];
  const all = orders(y).map((order) => {
    const pairs = order.flatMap((a, i) =>
      order.slice(i + 1).map((b, j) => Math.sign(b - a) * Math.sign(x[i + 1 + j]! - x[i]!)),
    );
    return pairs.reduce((sum, sign) => sum + sign, 0);
  });
  const exact = all.reduce((sum, s) => sum + s * s, 0) / all.length;
  expect(kendallVariance(x, y)).toBeCloseTo(exact, 9);
});

test('too few or equal values give no trend', () => {
  expect(mannKendall([1, NaN, 2]).pTwoSided).toBeNaN();
  expect(mannKendall([]).s).toBe(0);
  expect(mannKendall([4, 4, 4, 4])).toMatchObject({ s: 0, z: 0, pTwoSided: 1 });
});

function orders(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item, i) => orders(items.filter((_, j) => j !== i)).map((rest) => [item, ...rest]));
}
