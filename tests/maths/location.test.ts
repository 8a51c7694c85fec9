import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hodgesLehmann, huberLocation, mean, trimmedMean, weightedMedian } from '../../src/maths/location.js';
import { median } from '../../src/maths/quantile.js';

const reading = fc.double({ min: -1e6, max: 1e6, noNaN: true });

// Determinations of copper in wholemeal flour (Analytical Methods Committee 1989; R `MASS::chem`).
// Huber with the MAD as fixed scale and k = 1.5 gives 3.206724 (R `MASS::huber(chem)`); both from memory.
const chem = [
  2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2, 3.5, 3.6,
  3.7, 3.7,
];

test('Huber location of the copper data', () => {
  expect(huberLocation(chem, 1.5)).toBeCloseTo(3.206724, 5);
});

test('plain and trimmed means', () => {
  expect(mean([1, NaN, 3])).toBe(2);
  expect(trimmedMean([100, 1, 2, 3, -90], 0.2)).toBe(2);
  expect(trimmedMean([100, 1, 2, 3, -90], 0)).toBeCloseTo(3.2, 12);
  expect(trimmedMean([1, 2, 9], 0.5)).toBe(2);
});

test('weighted median: half of the weight decides', () => {
  expect(weightedMedian([1, 2, 3], [1, 1, 5])).toBe(3);
  expect(weightedMedian([3, 1, 2], [0, 1, 1])).toBe(1.5);
  expect(weightedMedian([1, NaN, 3], [1, 9, 2])).toBe(3);
});

test('weighted median with equal weights is the median', () => {
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 30 }), (values) => {
      expect(
        weightedMedian(
          values,
          values.map(() => 1),
        ),
      ).toBeCloseTo(median(values), 6);
    }),
  );
});

test('Hodges–Lehmann worked by hand: pair means of 1, 2, 6', () => {
  // 1 1.5 2 3.5 4 6 → middle of 2 and 3.5
  expect(hodgesLehmann([6, 1, 2])).toBe(2.75);
});

test('every location moves with the data', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 1, maxLength: 20 }), (values) => {
      const moved = values.map((value) => value + 512);
      for (const locate of [mean, median, huberLocation, hodgesLehmann]) {
        expect(locate(moved)).toBeCloseTo(locate(values) + 512, 6);
      }
    }),
  );
});

test('NaN for no data', () => {
  for (const locate of [mean, huberLocation, hodgesLehmann]) expect(locate([NaN])).toBeNaN();
  expect(trimmedMean([], 0.1)).toBeNaN();
  expect(weightedMedian([], [])).toBeNaN();
});
