import { expect, test } from 'vitest';
import { clopperPearson } from '../../src/maths/binomial-interval.js';

test('Clopper–Pearson: Conover 1971, p. 97 (R `binom.test` example), 682 of 925', () => {
  const { low, high } = clopperPearson(682, 925);
  expect(low).toBeCloseTo(0.7076683, 6);
  expect(high).toBeCloseTo(0.7654066, 6);
});

test('no successes: the limit solves (1 − p)ⁿ = α/2', () => {
  expect(clopperPearson(0, 10)).toEqual({ low: 0, high: expect.closeTo(1 - 0.025 ** 0.1, 10) });
  expect(clopperPearson(10, 10)).toEqual({ low: expect.closeTo(0.025 ** 0.1, 10), high: 1 });
});

test('no trials leave everything open; what cannot be is NaN', () => {
  expect(clopperPearson(0, 0)).toEqual({ low: 0, high: 1 });
  expect(clopperPearson(3, 2).low).toBeNaN();
});
