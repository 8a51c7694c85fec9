import { expect, test } from 'vitest';
import { compareRates } from '../../src/maths/exact-rates.js';

// Data of the R documentation of poisson.test (after the ISwR data eba1977): 11 in 800 against 21 in 3011;
// its printed result (p 0.07967, ratio 1.9715, 0.8584 to 4.2773) from memory, recomputed with scipy.
test('11 in 800 against 21 in 3011', () => {
  const { ratio, low, high, pTwoSided } = compareRates({ events: 11, exposure: 800 }, { events: 21, exposure: 3011 });
  expect(pTwoSided).toBeCloseTo(0.07966863, 7);
  expect(ratio).toBeCloseTo(1.9714881, 6);
  expect(low).toBeCloseTo(0.8584264, 6);
  expect(high).toBeCloseTo(4.27726594, 6);
});

test('swapping the two turns the ratio over', () => {
  const one = compareRates({ events: 7, exposure: 10 }, { events: 3, exposure: 25 });
  const other = compareRates({ events: 3, exposure: 25 }, { events: 7, exposure: 10 });
  expect(other.ratio).toBeCloseTo(1 / one.ratio, 10);
  expect(other.low).toBeCloseTo(1 / one.high, 9);
  expect(other.pTwoSided).toBeCloseTo(one.pTwoSided, 10);
  expect(other.pLower).toBeCloseTo(one.pHigher, 10);
});

test('events in one only: one open end; p from the share of the exposure', () => {
  const { ratio, low, high, pHigher } = compareRates({ events: 5, exposure: 1 }, { events: 0, exposure: 3 });
  expect([ratio, high]).toEqual([Infinity, Infinity]);
  expect(low).toBeGreaterThan(1);
  expect(pHigher).toBeCloseTo(0.25 ** 5, 12);
});

test('no events, no exposure', () => {
  const none = compareRates({ events: 0, exposure: 1 }, { events: 0, exposure: 1 });
  expect(none).toMatchObject({ ratio: NaN, low: 0, high: Infinity, pTwoSided: 1 });
  expect(compareRates({ events: 1, exposure: 0 }, { events: 1, exposure: 1 }).pTwoSided).toBeNaN();
});
