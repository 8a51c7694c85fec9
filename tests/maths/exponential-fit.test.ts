import { expect, test } from 'vitest';
import { fitExponential } from '../../src/maths/exponential-fit.js';
import { Random } from '../make/random.js';

const t = Array.from({ length: 120 }, (_, i) => 1000 + i * 5);
const cooling = (at: number) => 25 + 155 * Math.exp(-(at - 1000) / 180);

test('gives back an exact decay', () => {
  const fit = fitExponential(t, t.map(cooling));
  expect(fit.tau).toBeCloseTo(180, 3);
  expect(fit.final).toBeCloseTo(25, 3);
  expect(fit.departure).toBeCloseTo(155, 3);
  expect(fit.isResolved).toBe(true);
});

// NIST StRD nonlinear regression, dataset Misra1a: y = b1·(1 − exp(−b2·x)), certified with intercept 0.
// Free of that constraint this model must fit at least as well: residual sum of squares 0.12455138894.
test('fits Misra1a at least as well as the certified two-parameter model', () => {
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const fit = fitExponential(x, y);
  expect(fit.residualSquares).toBeLessThanOrEqual(0.12455138894);
  expect(1 / fit.tau).toBeCloseTo(5.5015643181e-4, 4); // certified b2
});

test('the standard error of the time constant is the scatter of the estimates', () => {
  const random = new Random(13);
  const fits = Array.from({ length: 120 }, () =>
    fitExponential(
      t,
      t.map((at) => cooling(at) + random.gauss()),
    ),
  );
  const mean = fits.reduce((sum, { tau }) => sum + tau, 0) / fits.length;
  const scatter = Math.sqrt(fits.reduce((sum, { tau }) => sum + (tau - mean) ** 2, 0) / (fits.length - 1));
  expect(mean).toBeGreaterThan(178);
  expect(mean).toBeLessThan(182);
  expect(fits[0]!.tauError / scatter).toBeGreaterThan(0.75);
  expect(fits[0]!.tauError / scatter).toBeLessThan(1.35);
});

test('a straight line, a level and clock times', () => {
  expect(fitExponential(t, t).isResolved).toBe(false);
  expect(
    fitExponential(
      t,
      t.map(() => 7),
    ).isResolved,
  ).toBe(false);
  const clock = t.map((at) => 1.7e12 + at * 1000);
  expect(fitExponential(clock, t.map(cooling)).tau / 180_000).toBeCloseTo(1, 4);
});

test('too little data', () => {
  expect(fitExponential([0, 1, 2], [3, 2, 1.5]).tau).toBeNaN();
  expect(fitExponential([1, 1, 1, 1], [1, 2, 3, 4]).isResolved).toBe(false);
});
