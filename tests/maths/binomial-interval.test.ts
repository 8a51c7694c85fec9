import { expect, test } from 'vitest';
import { clopperPearson, wilson } from '../../src/maths/binomial-interval.js';

test('Clopper–Pearson: Conover 1971, p. 97 (R `binom.test` example), 682 of 925', () => {
  const { low, high } = clopperPearson(682, 925);
  expect(low).toBeCloseTo(0.7076683, 6);
  expect(high).toBeCloseTo(0.7654066, 6);
});

test('no successes: the limit solves (1 − p)ⁿ = α/2', () => {
  expect(clopperPearson(0, 10)).toEqual({ low: 0, high: expect.closeTo(1 - 0.025 ** 0.1, 10) });
  expect(clopperPearson(10, 10)).toEqual({ low: expect.closeTo(0.025 ** 0.1, 10), high: 1 });
});

// Newcombe 1998, Statistics in Medicine 17:857–872, table I: 81 of 263, score method 0.2553 to 0.3662; 0 of 20: 0 to 0.1611.
test('Wilson: the examples of Newcombe', () => {
  const { low, high } = wilson(81, 263);
  expect(low).toBeCloseTo(0.2553, 4);
  expect(high).toBeCloseTo(0.3662, 4);
  expect(wilson(0, 20).low).toBe(0);
  expect(wilson(0, 20).high).toBeCloseTo(0.1611, 4);
});

test('no trials leave everything open; what cannot be is NaN', () => {
  for (const limits of [clopperPearson, wilson]) {
    expect(limits(0, 0)).toEqual({ low: 0, high: 1 });
    expect(limits(3, 2).low).toBeNaN();
  }
});
