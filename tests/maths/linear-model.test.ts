import fc from 'fast-check';
import { expect, test } from 'vitest';
import { constantColumn, fitLinear } from '../../src/maths/linear-model.js';
import { NORRIS, STACK_LOSS } from './published-data.js';

const { air, water, acid, loss } = STACK_LOSS;
const stackColumns = [constantColumn(loss.length), air, water, acid];

test('reaches the certified figures of NIST StRD Norris', () => {
  const fit = fitLinear([constantColumn(36), NORRIS.x], NORRIS.y);
  expect(fit.coefficients[0]! / NORRIS.intercept).toBeCloseTo(1, 11);
  expect(fit.coefficients[1]! / NORRIS.slope).toBeCloseTo(1, 13);
  expect(Math.sqrt(fit.covariance[0]![0]!) / NORRIS.interceptError).toBeCloseTo(1, 11);
  expect(Math.sqrt(fit.covariance[1]![1]!) / NORRIS.slopeError).toBeCloseTo(1, 11);
  expect(fit.residualSd / NORRIS.residualSd).toBeCloseTo(1, 11);
  expect(fit.dof).toBe(34);
});

// Coefficients and errors as printed for R `summary(lm(stack.loss ~ .))`; from memory.
test('several regressors: the stack loss data', () => {
  const fit = fitLinear(stackColumns, loss);
  const printed = [
    [-39.9197, 11.896],
    [0.7156, 0.1349],
    [1.2953, 0.368],
    [-0.1521, 0.1563],
  ];
  for (const [k, [coefficient, error]] of printed.entries()) {
    expect(fit.coefficients[k]).toBeCloseTo(coefficient!, 4);
    expect(Math.sqrt(fit.covariance[k]![k]!)).toBeCloseTo(error!, 3);
  }
  expect(fit.residualSd).toBeCloseTo(3.243, 3);
  expect(fit.dof).toBe(17);
});

test('residuals of the fit are square to every column', () => {
  const fit = fitLinear(stackColumns, loss);
  const residuals = loss.map((y, row) => y - fitted(fit.coefficients, row));
  for (const column of stackColumns) {
    expect(residuals.reduce((sum, residual, row) => sum + residual * column[row]!, 0)).toBeCloseTo(0, 9);
  }
});

function fitted(coefficients: ArrayLike<number>, row: number): number {
  return stackColumns.reduce((sum, column, k) => sum + coefficients[k]! * column[row]!, 0);
}

test('a whole weight counts as so many equal rows', () => {
  const row = fc.record({
    x: fc.integer({ min: -9, max: 9 }),
    y: fc.integer({ min: -9, max: 9 }),
    w: fc.integer({ min: 0, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(row, { minLength: 3, maxLength: 12 }), (rows) => {
      const repeated = rows.flatMap((one) => Array.from({ length: one.w }, () => one));
      const columns = (from: typeof rows) => [constantColumn(from.length), from.map(({ x }) => x)];
      const weighed = fitLinear(
        columns(rows),
        rows.map(({ y }) => y),
        rows.map(({ w }) => w),
      );
      const plain = fitLinear(
        columns(repeated),
        repeated.map(({ y }) => y),
      );
      if (new Set(repeated.map(({ x }) => x)).size < 2) expect(weighed.coefficients).toEqual([NaN, NaN]);
      else for (const k of [0, 1]) expect(weighed.coefficients[k]).toBeCloseTo(plain.coefficients[k]!, 8);
    }),
  );
});

test('weights that are inverse variances give the usual covariance of a weighted mean', () => {
  // two groups of the same mean, variances 1 and 4: weighted mean has (Σwx)/(Σw)
  const fit = fitLinear([constantColumn(4)], [1, 3, 6, 2], [1, 1, 0.25, 0.25]);
  expect(fit.coefficients[0]).toBeCloseTo((1 + 3 + 1.5 + 0.5) / 2.5, 12);
  expect(fit.covariance[0]![0]).toBeCloseTo(fit.residualSd ** 2 / 2.5, 12);
});

test('says NaN for columns that depend on each other or too few rows', () => {
  expect(
    fitLinear(
      [
        [1, 2, 3],
        [2, 4, 6],
      ],
      [1, 2, 3],
    ).coefficients,
  ).toEqual([NaN, NaN]);
  expect(fitLinear([[1], [2]], [1]).coefficients).toEqual([NaN, NaN]);
  expect(fitLinear([[0, 0]], [1, 2]).coefficients).toEqual([NaN]);
  const exact = fitLinear([constantColumn(2), [0, 1]], [5, 7]);
  expect(exact.coefficients[1]).toBeCloseTo(2, 12);
  expect(exact.residualSd).toBeNaN();
});

test('a row with a gap anywhere is left out', () => {
  const fit = fitLinear([constantColumn(4), [0, 1, NaN, 3]], [1, 3, 99, NaN]);
  expect(fit.count).toBe(2);
});
