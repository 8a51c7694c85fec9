import { expect, test } from 'vitest';
import { driftOf } from '../../src/assemble/drift.js';
import type { Facts } from '../../src/model/detector.js';
import type { Verdict } from '../../src/weigh/weigh-plant.js';

/** A verdict on a sensor with what each detector says. */
function verdictOn(told: Readonly<Record<string, Facts>>): Verdict {
  const outcomes = Object.entries(told).map(([detector, facts]) => [
    detector,
    { detector, symptoms: [{ detector, zone: 0, startMs: 0, endMs: 1, count: 1, facts }] },
  ]);
  const probabilities = { sensor: 0.9, wiring: 0.05, input: 0, heater: 0, recording: 0, none: 0.05 };
  return { probabilities, evidence: { outcomes: new Map(outcomes as never) } } as unknown as Verdict;
}

test('cold and hot together: one size, limits of 9 in 10, and what each gave by itself', () => {
  const facts = { offsetDegC: -7, uncertaintyDegC: 1, coldOffsetDegC: -6, hotOffsetDegC: -8 };
  const { offsetDegC, offsetBasis } = driftOf(
    verdictOn({ 'slow-drift': facts, 'duty-shift': { residualDegC: -9, residualErrorDegC: 0.5 } }),
  );
  expect(offsetDegC).toBe(-7);
  // 90 % of a normal spread lie within 1.645 standard deviations (any table of the normal distribution).
  expect(offsetBasis).toEqual({
    ...{
      detector: 'slow-drift',
      from: 'both',
      lowDegC: expect.closeTo(-8.645, 1) as number,
      highDegC: expect.closeTo(-5.355, 1) as number,
      coldDegC: -6,
      hotDegC: -8,
    },
  });
});

test('the duty alone is known less well than its scatter says', () => {
  const { offsetBasis } = driftOf(verdictOn({ 'duty-shift': { residualDegC: -4, residualErrorDegC: 0.1 } }));
  expect(offsetBasis).toMatchObject({ from: 'duty', coldDegC: null, hotDegC: -4 });
  expect(offsetBasis!.highDegC - offsetBasis!.lowDegC).toBeGreaterThan(3);
});

test('soaks alone', () => {
  const soaks = driftOf(verdictOn({ 'cold-soak-offset': { offsetDegC: 2, uncertaintyDegC: 0.1 } }));
  expect(soaks.offsetBasis).toMatchObject({ from: 'soaks', coldDegC: 2, hotDegC: null });
  const step = { offsetDegC: 2, uncertaintyDegC: 0.1, coldOffsetDegC: 2, hotOffsetDegC: NaN };
  expect(driftOf(verdictOn({ 'offset-step': step })).offsetBasis).toMatchObject({ from: 'soaks' });
});
