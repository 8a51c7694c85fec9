import hypergeometricPmf from '@stdlib/stats-base-dists-hypergeometric-pmf';
import { expect, test } from 'vitest';
import { exactTails, meanPlace, weightsFromRatios } from '../../src/maths/exact-tails.js';

test('a fair die: tails by counting', () => {
  const die = weightsFromRatios(6, () => 0);
  expect(exactTails(die, 1).atMost).toBeCloseTo(2 / 6, 12);
  expect(exactTails(die, 1).atLeast).toBeCloseTo(5 / 6, 12);
  expect(exactTails(die, 1).twoSided).toBe(1);
  expect(meanPlace(die)).toBeCloseTo(2.5, 12);
});

test('hypergeometric weights agree with a library', () => {
  // 30 drawn from 100 of which 40 are marked
  const weights = weightsFromRatios(31, (x) => Math.log(((40 - x + 1) * (30 - x + 1)) / (x * (100 - 40 - 30 + x))));
  const upTo9 = Array.from({ length: 10 }, (_, x) => hypergeometricPmf(x, 100, 40, 30)).reduce((sum, p) => sum + p, 0);
  expect(exactTails(weights, 9).atMost).toBeCloseTo(upTo9, 12);
  expect(meanPlace(weights)).toBeCloseTo(12, 10);
});
