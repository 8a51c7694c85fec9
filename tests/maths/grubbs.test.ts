import { expect, test } from 'vitest';
import { grubbs } from '../../src/maths/grubbs.js';

// NIST/SEMATECH e-Handbook 1.3.5.17.1, data of Tietjen & Moore 1972.
const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];

test('the NIST handbook example', () => {
  const high = grubbs(values, 'high');
  expect(Math.abs(high.g - 2.4687)).toBeLessThan(0.0001); // printed cut off, not rounded
  expect(high.critical).toBeCloseTo(2.032, 3);
  expect(high).toMatchObject({ isOutlier: true, index: 7 });
});

test('two-sided critical value (computed with scipy)', () => {
  expect(grubbs(values).critical).toBeCloseTo(2.1266, 4);
});

test('looks at the low end when asked, and over gaps', () => {
  const mirrored = [NaN, ...values.map((value) => -value)];
  expect(grubbs(mirrored, 'low')).toMatchObject({ isOutlier: true, index: 8 });
  expect(grubbs(mirrored, 'high').isOutlier).toBe(false);
});

test('cannot tell from two values or without spread', () => {
  expect(grubbs([1, 2])).toMatchObject({ isOutlier: false, index: -1 });
  expect(grubbs([3, 3, 3, 3]).g).toBeNaN();
});
