import fc from 'fast-check';
import { expect, test } from 'vitest';
import { auroc, brierOfClasses, brierScore, calibrationBins, logLoss } from './scores.js';

const sure = [
  { probability: 1, happened: true },
  { probability: 0, happened: false },
];
const half = sure.map(({ happened }) => ({ probability: 0.5, happened }));

test('Brier score from its definition', () => {
  expect(brierScore(sure)).toBe(0);
  expect(brierScore(half)).toBe(0.25);
  expect(
    brierScore([
      { probability: 0.8, happened: true },
      { probability: 0.3, happened: true },
    ]),
  ).toBeCloseTo(0.265, 12);
  expect(brierOfClasses([0.7, 0.2, 0.1], 0)).toBeCloseTo(0.14, 12);
});

test('log loss of always one half is log 2, and one sure miss stays finite', () => {
  expect(logLoss(half)).toBeCloseTo(Math.log(2), 12);
  expect(logLoss([{ probability: 0, happened: true }])).toBeCloseTo(-Math.log(1e-15), 6);
});

test('calibration bins count every forecast once', () => {
  const bins = calibrationBins([...sure, ...half, { probability: NaN, happened: true }], 5);
  expect(bins.map(({ count }) => count)).toEqual([1, 0, 2, 0, 1]);
  expect(bins[2]).toMatchObject({ meanProbability: 0.5, happenedShare: 0.5 });
  expect(bins[1]!.happenedShare).toBeNaN();
});

test('AUROC is the share of pairs won, ties one half', () => {
  const scored = fc.array(fc.tuple(fc.integer({ min: 0, max: 5 }), fc.boolean()), { maxLength: 30 });
  fc.assert(
    fc.property(scored, (cases) => {
      const yes = cases.filter(([, happened]) => happened);
      const no = cases.filter(([, happened]) => !happened);
      const won = yes.flatMap(([a]) => no.map(([b]) => (a > b ? 1 : a === b ? 0.5 : 0)));
      const area = auroc(
        cases.map(([score]) => score),
        cases.map(([, happened]) => happened),
      );
      if (won.length === 0) expect(area).toBeNaN();
      else expect(area).toBeCloseTo(won.reduce<number>((sum, win) => sum + win, 0) / won.length, 10);
    }),
  );
});

test('AUROC of separated scores, also infinite ones', () => {
  expect(auroc([-Infinity, 0, 2, Infinity, NaN], [false, false, true, true, false])).toBe(1);
});

test('NaN for no forecasts', () => {
  expect(brierScore([])).toBeNaN();
  expect(logLoss([])).toBeNaN();
  expect(brierOfClasses([], 0)).toBeNaN();
});
