import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pettitt } from '../../src/maths/pettitt.js';
import { NILE } from './published-data.js';

test('the Nile changes after year 28 (K 1617 computed from the definition)', () => {
  const change = pettitt(NILE);
  expect(change).toMatchObject({ k: 1617, index: 28 });
  expect(change.pTwoSided / 3.591e-7).toBeCloseTo(1, 3);
});

test('U is the count of lower pairs minus higher pairs across the split', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 5 }), { minLength: 2, maxLength: 15 }), (values) => {
      const across = values.slice(1).map((_, i) => {
        const after = values.slice(i + 1);
        return values.slice(0, i + 1).flatMap((a) => after.map((b) => Math.sign(a - b)));
      });
      const sums = across.map((signs) => Math.abs(signs.reduce<number>((sum, sign) => sum + sign, 0)));
      expect(pettitt(values).k).toBe(Math.max(...sums));
    }),
  );
});

test('gaps keep their places; too little is NaN', () => {
  expect(pettitt([1, 1, 1, NaN, 9, 9, 9]).index).toBe(4);
  expect(pettitt([NaN, 3]).pTwoSided).toBeNaN();
});
