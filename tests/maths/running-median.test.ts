import fc from 'fast-check';
import { expect, test } from 'vitest';
import { median } from '../../src/maths/quantile.js';
import { medianAround, runningMedian } from '../../src/maths/running-median.js';

const maybeReading = fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constant(NaN));

test('is the median of each window, gaps and ends included', () => {
  fc.assert(
    fc.property(fc.array(maybeReading, { maxLength: 40 }), fc.integer({ min: 1, max: 9 }), (values, width) => {
      const ahead = Math.floor((width - 1) / 2);
      const behind = width - 1 - ahead;
      const centred = values.map((_, i) => median(values.slice(Math.max(0, i - behind), i + ahead + 1)));
      const trailing = values.map((_, i) => median(values.slice(Math.max(0, i - width + 1), i + 1)));
      expect([...runningMedian(values, width)]).toEqual(centred);
      expect([...runningMedian(values, width, 'trailing')]).toEqual(trailing);
      expect(values.map((_, i) => medianAround(values, i, width))).toEqual(centred);
    }),
  );
});

test('takes out a spike and leaves a step', () => {
  expect([...runningMedian([1, 1, 9, 1, 1, 5, 5, 5], 3)]).toEqual([1, 1, 1, 1, 1, 5, 5, 5]);
});

test('a window of no places has no median', () => {
  expect([...runningMedian([1, 2], 0)]).toEqual([NaN, NaN]);
  expect([...runningMedian([1, 2], -5)]).toEqual([NaN, NaN]);
});
