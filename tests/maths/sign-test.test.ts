import { expect, test } from 'vitest';
import { signTest } from '../../src/maths/sign-test.js';

test('sign test: 9 of 10 above is 22 of 1024 both ways', () => {
  const values = [1, 2, 3, 4, 5, 6, 7, 8, 9, -1, 0, NaN];
  expect(signTest(values)).toEqual({ above: 9, below: 1, pTwoSided: expect.closeTo(22 / 1024, 12) });
  expect(signTest([0, 0]).pTwoSided).toBe(1);
});
