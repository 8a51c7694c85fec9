import { expect, test } from 'vitest';
import { normalQuantile } from '../../src/maths/normal.js';
import { MAD_TO_SD, medianAbsoluteDeviation, noiseSd, robustSd } from '../../src/maths/spread.js';
import { Random } from '../make/random.js';

test('the MAD factor is 1/Φ⁻¹(0.75) = 1.4826 (definition)', () => {
  expect(MAD_TO_SD).toBeCloseTo(1 / normalQuantile(0.75), 12);
  expect(MAD_TO_SD).toBeCloseTo(1.482602219, 9);
});

test('the MAD of a small sample, worked by hand', () => {
  // median 2; distances 1 1 0 0 2 4 7, their median 1
  expect(medianAbsoluteDeviation([1, 1, 2, 2, 4, 6, 9])).toBe(1);
  expect(robustSd([1, 1, 2, NaN, 2, 4, 6, 9])).toBeCloseTo(1.4826, 4);
});

test('finds the spread of normal data although a third of it is spoilt', () => {
  const random = new Random(1);
  const values = Array.from({ length: 3000 }, (_, i) => (i % 3 === 0 ? 850 : 200 + 2 * random.gauss()));
  expect(robustSd(values.filter((value) => value < 850))).toBeCloseTo(2, 0);
  expect(robustSd(values)).toBeLessThan(6);
});

test('noise is not fooled by a level that steps and drifts', () => {
  const random = new Random(2);
  const values = Array.from({ length: 2000 }, (_, i) => (i > 900 ? 50 : 0) + i * 0.01 + 0.5 * random.gauss());
  expect(noiseSd(values)).toBeGreaterThan(0.46);
  expect(noiseSd(values)).toBeLessThan(0.54);
});

test('rounded values are not free of noise; equal ones are, also when arithmetic left its traces', () => {
  expect(noiseSd([20, 20, 20, 20.5, 20, 20, 20, 20, 20.5, 20])).toBeCloseTo(0.5 / Math.sqrt(12), 12);
  expect(noiseSd([0.3, 0.1 + 0.2, 0.3, 0.3])).toBeLessThan(1e-12);
});

test('answers for little data', () => {
  expect(robustSd([7])).toBe(0);
  expect(robustSd([])).toBeNaN();
  expect(noiseSd([7, NaN])).toBeNaN();
});
