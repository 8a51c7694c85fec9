import fc from 'fast-check';
import { expect, test } from 'vitest';
import { currentDegC, currentMa, currentState } from '../../src/sensors/current-loop.js';
import { valueOf } from './printed.js';

const span = { lowDegC: 0, highDegC: 200 };

// NAMUR NE 43, as trade texts give it: measuring 3.8…20.5 mA, failure at or below 3.6 and at or above 21 mA.
test.each([
  [0, 'failure-low'],
  [3.6, 'failure-low'],
  [3.7, 'below-range'],
  [3.8, 'measuring'],
  [12, 'measuring'],
  [20.5, 'measuring'],
  [20.7, 'above-range'],
  [21, 'failure-high'],
  [NaN, 'failure-low'],
] as const)('%d mA is %s', (mA, state) => expect(currentState(mA)).toBe(state));

test('current and temperature give each other back', () => {
  fc.assert(
    fc.property(fc.double({ min: -2, max: 205, noNaN: true }), (at) => {
      const mA = valueOf(currentMa(at, span)).currentMa;
      expect(Math.abs(valueOf(currentDegC(mA, span)).degC - at)).toBeLessThan(1e-9);
    }),
    { seed: 43, numRuns: 200 },
  );
  expect(valueOf(currentMa(100, { lowDegC: 200, highDegC: 0 })).currentMa).toBeCloseTo(12, 12);
});

test('outside the measuring range and without a span there is a sentence', () => {
  expect(currentDegC(3.5, span)).toEqual({
    ok: false,
    code: 'below-range',
    says: '3.50 mA is below 3.8 mA, where NAMUR NE 43 ends the measuring range.',
  });
  expect(currentDegC(21, span)).toMatchObject({ ok: false, code: 'above-range' });
  expect(currentMa(250, span)).toMatchObject({ ok: false, code: 'above-range' });
  expect(currentMa(-20, span)).toMatchObject({ ok: false, code: 'below-range' });
  expect(currentMa(NaN, span)).toMatchObject({ ok: false, code: 'not-a-number' });
  expect(currentMa(20, { lowDegC: 5, highDegC: 5 })).toMatchObject({ ok: false, code: 'no-span' });
});
