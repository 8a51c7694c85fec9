import { expect, test } from 'vitest';
import { changeInMean } from '../../src/maths/change-in-mean.js';
import { Random } from '../make/random.js';
import { NILE } from './published-data.js';

// Cobb 1978; break, interval and BIC as in Zeileis, Kleiber, Krämer & Hornik 2003, Comput. Stat. Data Anal. 44:109–123:
// one break after year 28 (1898), 95 % interval 25 to 32, BIC 1318 without and 1270 with it.
test('the Nile of 1898', () => {
  const change = changeInMean(NILE);
  expect(change.index).toBe(28);
  expect([change.indexLow, change.indexHigh]).toEqual([25, 32]);
  expect(change.meanBefore).toBeCloseTo(1097.75, 9);
  expect(change.meanAfter).toBeCloseTo(849.972222, 6);
  expect(change.squaresWithout).toBeCloseTo(2835156.75, 4);
  expect(change.squaresWith).toBeCloseTo(1597457.194444, 4);
  expect(change.bicGain).toBeCloseTo(1318.24180681 - 1270.08373574, 6);
});

test('the 90 % interval holds the true place about 9 times in 10, with unequal scatter too', () => {
  const random = new Random(6);
  let held = 0;
  for (let round = 0; round < 400; round++) {
    const values = Array.from({ length: 120 }, (_, i) => (i < 50 ? random.gauss() : 1.5 + 2 * random.gauss()));
    const { indexLow, indexHigh } = changeInMean(values, { confidence: 0.9 });
    if (indexLow <= 50 && 50 <= indexHigh) held++;
  }
  expect(held / 400).toBeGreaterThan(0.84);
  expect(held / 400).toBeLessThan(0.97);
});

test('says so when there is none: BIC loses on most noise', () => {
  const random = new Random(7);
  const gains = Array.from(
    { length: 100 },
    () => changeInMean(Array.from({ length: 80 }, () => random.gauss())).bicGain,
  );
  expect(gains.filter((gain) => gain > 0).length).toBeLessThan(20);
});

test('gaps keep their places', () => {
  const values = [1, NaN, 1.1, 0.9, 1, NaN, NaN, 5, 5.1, 4.9, 5];
  expect(changeInMean(values).index).toBe(7);
  expect(changeInMean(values).count).toBe(8);
});

test('a clean step has its place and nothing else', () => {
  const change = changeInMean([2, 2, 2, 2, 2, 7, 7, 7, 7]);
  expect([change.indexLow, change.index, change.indexHigh]).toEqual([4, 5, 6]);
  expect(change.bicGain).toBeGreaterThan(100);
  expect(change.bicGain).toBeLessThan(Infinity);
});

test('little data and no change at all', () => {
  expect(changeInMean([1, 2, 3, 4, 5]).index).toBe(-1);
  expect(changeInMean([]).bicGain).toBeNaN();
  for (const level of [3, 0, 0.1, 200.1, -1 / 3])
    expect(changeInMean(new Array<number>(50).fill(level)).index).toBe(-1);
});
