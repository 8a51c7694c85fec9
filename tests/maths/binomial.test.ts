import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { binomialTest } from '../../src/maths/binomial.js';

// Conover 1971, Practical Nonparametric Statistics, p. 97 (R `binom.test` example): 682 of 925, share 3/4, p = 0.3825.
test('Mendel plants of Conover', () => {
  expect(binomialTest(682, 925, 0.75).twoSided).toBeCloseTo(0.3825, 4);
});

test('tails agree with a library', () => {
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), share, (a, b, p) => {
      const [successes, trials] = [Math.min(a, b), Math.max(a, b)];
      expect(binomialTest(successes, trials, p).atMost).toBeCloseTo(binomialCdf(successes, trials, p), 9);
    }),
  );
});

test('nothing tried tells nothing; what cannot be is NaN', () => {
  expect(binomialTest(0, 0)).toEqual({ atMost: 1, atLeast: 1, twoSided: 1 });
  expect(binomialTest(3, 2).twoSided).toBeNaN();
  expect(binomialTest(1.5, 2).twoSided).toBeNaN();
  expect(binomialTest(1, 2, 0).atMost).toBeNaN();
});

test('chances below the smallest double do not spoil the sum', () => {
  expect(binomialTest(1000, 2000, 0.5).atMost).toBeCloseTo(0.5 + 0.5 * 0.01783901, 6); // plus half of P(X = 1000)
  expect(binomialTest(2000, 2000, 0.5).atLeast).toBe(0); // 2⁻²⁰⁰⁰
});
