import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { expect, test } from 'vitest';
import { gaussLegendre } from '../../src/maths/gauss-legendre.js';
import { updatedShares } from '../../src/maths/share-update.js';

// Gelman and others, Bayesian Data Analysis, 3rd ed., section 2.4: of 980 births with placenta praevia 437 were girls.
const [girls, boys] = [437, 543];

test('a uniform prior: the worked example of the book, mean 0.446 and 95 % from 0.415 to 0.477', () => {
  const [share] = updatedShares([0.5, 0.5], 2, [girls, boys]);
  expect(share).toBeCloseTo(0.446, 3);
  const [alpha, beta] = [share! * (2 + girls + boys), (1 - share!) * (2 + girls + boys)];
  expect([alpha, beta].map((value) => Math.round(value))).toEqual([438, 544]);
  expect(betaQuantile(0.025, alpha, beta)).toBeCloseTo(0.415, 3);
  expect(betaQuantile(0.975, alpha, beta)).toBeCloseTo(0.477, 3);
});

test.each([
  // prior mean 0.485 worth so many births; posterior medians of table 2.1 there, from memory
  [5, 0.446],
  [20, 0.447],
  [100, 0.45],
  [200, 0.453],
])('a prior worth %i births', (worth, median) => {
  const [share] = updatedShares([0.485, 0.515], worth, [girls, boys]);
  const total = worth + girls + boys;
  expect(Math.abs(betaQuantile(0.5, share! * total, (1 - share!) * total) - median)).toBeLessThan(6e-4);
});

test('three shares: the poll of the book’s section 3.4, 727, 583 and 137 of 1447, uniform prior', () => {
  const shares = updatedShares([1 / 3, 1 / 3, 1 / 3], 3, [727, 583, 137]);
  // Dirichlet(728, 584, 138)
  expect(shares.map((share) => share * 1450)).toEqual(
    [728, 584, 138].map((count) => expect.closeTo(count, 9) as number),
  );
});

test('is the mean of prior × likelihood, integrated without the closed form', () => {
  const [alpha, beta, found, other] = [3.2, 4.8, 3, 2];
  const density = (share: number): number => share ** (alpha - 1 + found) * (1 - share) ** (beta - 1 + other);
  const { at, weight } = gaussLegendre(60, 0, 1);
  const integral = (f: (x: number) => number): number => at.reduce((sum, x, i) => sum + weight[i]! * f(x), 0);
  const mean = integral((share) => share * density(share)) / integral(density);
  const [share] = updatedShares([alpha / (alpha + beta), beta / (alpha + beta)], alpha + beta, [found, other]);
  expect(share).toBeCloseTo(mean, 7);
});

test('nothing counted changes nothing; what is no count gives NaN', () => {
  expect(updatedShares([0.25, 0.75], 20, [0, 0])).toEqual([0.25, 0.75]);
  expect(updatedShares([0.25, 0.75], 0, [1, 0])).toEqual([NaN, NaN]);
  expect(updatedShares([0.25, 0.75], 20, [-1, 0])).toEqual([NaN, NaN]);
});
