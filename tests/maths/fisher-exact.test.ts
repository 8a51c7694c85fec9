import hypergeometricPmf from '@stdlib/stats-base-dists-hypergeometric-pmf';
import { expect, test } from 'vitest';
import { fisherExact, type TwoByTwo } from '../../src/maths/fisher-exact.js';

// Fisher 1935, The Design of Experiments; p of the table 3 1 / 1 3 as in the R documentation of fisher.test.
test('the tea test: three of four right, and all', () => {
  const three = fisherExact(tableOf(3, 1, 1, 3));
  expect(three.atLeast).toBeCloseTo(0.2428571429, 9);
  expect(three.twoSided).toBeCloseTo(0.4857142857, 9);
  expect(fisherExact(tableOf(4, 0, 0, 4)).atLeast).toBeCloseTo(1 / 70, 12);
});

// Fisher 1962, convictions of like-sex twins (R documentation of fisher.test): one-sided p 0.0004652; from memory.
test('the twins', () => {
  expect(fisherExact(tableOf(2, 10, 15, 3)).atMost).toBeCloseTo(0.0004652, 6);
});

test('agrees with the hypergeometric distribution of a library', () => {
  // 30 drawn from 100 of which 40 are marked, 9 of them
  const upTo9 = Array.from({ length: 10 }, (_, x) => hypergeometricPmf(x, 100, 40, 30)).reduce((sum, p) => sum + p, 0);
  expect(fisherExact(tableOf(9, 21, 31, 39)).atMost).toBeCloseTo(upTo9, 12);
});

test('a large table does not underflow', () => {
  const { twoSided } = fisherExact(tableOf(3000, 7000, 2000, 8000));
  expect(twoSided).toBeGreaterThan(0);
  expect(twoSided).toBeLessThan(1e-50);
});

test('an empty margin tells nothing; what cannot be is NaN', () => {
  expect(fisherExact(tableOf(0, 0, 3, 4))).toEqual({ atMost: 1, atLeast: 1, twoSided: 1 });
  expect(fisherExact(tableOf(-1, 0, 3, 4)).twoSided).toBeNaN();
});

function tableOf(a: number, b: number, c: number, d: number): TwoByTwo {
  return [
    [a, b],
    [c, d],
  ];
}
