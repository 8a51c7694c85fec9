import { expect, test } from 'vitest';
import { exactTails, weightsFromRatios } from '../../src/maths/exact-tails.js';

test('a fair die: tails by counting', () => {
  const die = weightsFromRatios(6, () => 0);
  expect(exactTails(die, 1).atMost).toBeCloseTo(2 / 6, 12);
  expect(exactTails(die, 1).atLeast).toBeCloseTo(5 / 6, 12);
  expect(exactTails(die, 1).twoSided).toBe(1);
});
