import fc from 'fast-check';
import { sampleStandardDeviation } from 'simple-statistics';
import { expect, test } from 'vitest';
import { mergeMoments, momentsOf, noMoments, populationSd, sampleSd } from '../../src/maths/moments.js';

const readings = fc.array(fc.integer({ min: -500, max: 500 }), { maxLength: 30 });

test('two halves merged give what the whole gives', () => {
  fc.assert(
    fc.property(readings, readings, (first, second) => {
      const whole = momentsOf([...first, ...second]);
      const merged = mergeMoments(momentsOf(first), momentsOf(second));
      expect(merged.count).toBe(whole.count);
      expect([merged.min, merged.max]).toEqual([whole.min, whole.max]);
      if (whole.count > 0) expect(merged.mean).toBeCloseTo(whole.mean, 8);
      expect(merged.squares).toBeCloseTo(whole.squares, 5);
    }),
  );
});

test('agrees with another library', () => {
  const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  expect(sampleSd(momentsOf(values))).toBeCloseTo(sampleStandardDeviation(values), 10);
});

test('keeps its figures on a high level, where sums of squares lose them', () => {
  const moments = momentsOf([1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16]);
  expect(sampleSd(moments) ** 2).toBeCloseTo(30, 9); // 4 7 13 16: squares 36 + 9 + 9 + 36 over 3
});

test('little data', () => {
  expect(noMoments().mean).toBeNaN();
  expect(sampleSd(momentsOf([NaN, 3]))).toBeNaN();
  expect(populationSd(momentsOf([3]))).toBe(0);
  expect(populationSd(momentsOf([]))).toBeNaN();
});
