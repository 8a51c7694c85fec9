import { expect, test } from 'vitest';
import { constantColumn } from '../../src/maths/linear-model.js';
import { fitRobust } from '../../src/maths/robust-fit.js';
import { Random } from '../make/random.js';
import { STACK_LOSS } from './published-data.js';

// Coefficients, errors and scale as printed for R `summary(MASS::rlm(stack.loss ~ .))`
// (Venables & Ripley, Modern Applied Statistics with S, 6.5); from memory.
test('the stack loss data', () => {
  const { air, water, acid, loss } = STACK_LOSS;
  const fit = fitRobust([constantColumn(loss.length), air, water, acid], loss);
  const printed = [
    [-41.0265, 9.8073],
    [0.8294, 0.1112],
    [0.9261, 0.3034],
    [-0.1278, 0.1289],
  ];
  for (const [k, [coefficient, error]] of printed.entries()) {
    expect(fit.coefficients[k]).toBeCloseTo(coefficient!, 4);
    expect(Math.sqrt(fit.covariance[k]![k]!)).toBeCloseTo(error!, 3);
  }
  expect(fit.residualSd).toBeCloseTo(2.441, 3);
  expect(fit.dof).toBe(17);
});

test('a fifth of wild values moves a line little, and they are given little weight', () => {
  const random = new Random(3);
  const x = Array.from({ length: 200 }, (_, i) => i / 10);
  const y = x.map((at, i) => 5 + 2 * at + 0.1 * random.gauss() + (i % 5 === 0 ? 80 : 0));
  const fit = fitRobust([constantColumn(200), x], y);
  expect(fit.coefficients[1]).toBeCloseTo(2, 1);
  expect(fit.coefficients[0]).toBeLessThan(5.2); // least squares would give 21
  expect(fit.rowWeights[0]).toBeLessThan(0.01);
});

test('an exact line with one wild value is found', () => {
  const x = [0, 1, 2, 3, 4, 5, 6, 7];
  const y = x.map((at) => (at === 6 ? 500 : 3 * at + 1));
  const fit = fitRobust([constantColumn(8), x], y);
  expect(fit.coefficients[0]).toBeCloseTo(1, 4);
  expect(fit.coefficients[1]).toBeCloseTo(3, 4);
});

test('gaps have no weight, dependent columns no answer', () => {
  const fit = fitRobust([constantColumn(5), [0, 1, 2, 3, 4]], [1, 2, NaN, 4, 5.5]);
  expect(fit.rowWeights[2]).toBeNaN();
  expect(fit.count).toBe(4);
  expect(
    fitRobust(
      [
        [1, 1],
        [2, 2],
      ],
      [1, 2],
    ).coefficients,
  ).toEqual([NaN, NaN]);
});
