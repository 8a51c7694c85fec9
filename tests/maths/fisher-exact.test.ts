import { expect, test } from 'vitest';
import { fisherExact } from '../../src/maths/fisher-exact.js';

// Fisher 1935, The Design of Experiments; table 3 1 / 1 3 from the R documentation of fisher.test (Agresti 1990, p. 61).
// The limits printed there carry a loose solver tolerance; the figures here are recomputed with scipy.
test('the tea test, three of four right', () => {
  const tea = fisherExact([
    [3, 1],
    [1, 3],
  ]);
  expect(tea.pHigher).toBeCloseTo(0.2428571429, 9);
  expect(tea.pTwoSided).toBeCloseTo(0.4857142857, 9);
  expect(tea.oddsRatio).toBeCloseTo(6.4083, 3);
  expect(tea.low).toBeCloseTo(0.2117356, 6);
  expect(tea.high).toBeCloseTo(626.24353, 4);
  expect(
    fisherExact(
      [
        [3, 1],
        [1, 3],
      ],
      0.9,
    ).low,
  ).toBeCloseTo(0.3135738, 6);
});

test('the tea test, all right: 1 in 70', () => {
  const tea = fisherExact([
    [4, 0],
    [0, 4],
  ]);
  expect(tea.pHigher).toBeCloseTo(1 / 70, 12);
  expect([tea.oddsRatio, tea.high]).toEqual([Infinity, Infinity]);
});

// Fisher 1962, convictions of like-sex twins (R documentation of fisher.test): 2 10 / 15 3,
// one-sided p 0.0004652, odds ratio 0.04693661; from memory.
test('the twins', () => {
  const twins = fisherExact([
    [2, 10],
    [15, 3],
  ]);
  expect(twins.pLower).toBeCloseTo(0.0004652, 6);
  expect(twins.oddsRatio).toBeCloseTo(0.04693661, 5);
});

test('a large table is near the plain odds ratio and does not underflow', () => {
  const large = fisherExact([
    [3000, 7000],
    [2000, 8000],
  ]);
  expect(large.oddsRatio / ((3000 * 8000) / (7000 * 2000))).toBeCloseTo(1, 3);
  expect(large.pTwoSided).toBeGreaterThan(0);
  expect(large.pTwoSided).toBeLessThan(1e-50);
});

test('an empty margin tells nothing; what cannot be is NaN', () => {
  expect(
    fisherExact([
      [0, 0],
      [3, 4],
    ]),
  ).toMatchObject({ oddsRatio: NaN, low: 0, high: Infinity, pTwoSided: 1 });
  expect(
    fisherExact([
      [-1, 0],
      [3, 4],
    ]).pTwoSided,
  ).toBeNaN();
});
