import { expect, test } from 'vitest';
import type { Probabilities } from '../../src/model/cause.js';
import { measurements } from '../../src/weigh/measurements.js';
import { informationBits, nextCheck } from '../../src/weigh/next-check.js';

const standing = { showsShare: 1, isRepaired: false };
const even: Probabilities = { sensor: 0.5, wiring: 0.5, input: 0, heater: 0, recording: 0, none: 0 };

test('a question whose answer settles two even causes tells one bit (Shannon 1948)', () => {
  const sure = { ...measurements[0]!, yes: { sensor: 1, wiring: 0, input: 0, heater: 0, recording: 0, none: 0 } };
  expect(informationBits(even, sure)).toBeCloseTo(1, 12);
});

test('a question answered alike by all causes tells nothing', () => {
  const same = {
    ...measurements[0]!,
    yes: { sensor: 0.4, wiring: 0.4, input: 0.4, heater: 0.4, recording: 0.4, none: 0.4 },
  };
  expect(informationBits(even, same)).toBeCloseTo(0, 12);
});

test('element or wire: the measurement at both ends or at the moved cable settles it', () => {
  expect(['both-ends', 'move-the-cable']).toContain(nextCheck(even, standing).id);
});

test('heater or nothing: the heater circuit settles it', () => {
  expect(nextCheck({ ...even, sensor: 0, wiring: 0, heater: 0.6, none: 0.4 }, standing).id).toBe('heater-circuit');
});

test('a fault that comes and goes is provoked: one that does not show tells a meter nothing', () => {
  const seldom = { showsShare: 0.1, isRepaired: false };
  expect(['move-the-cable', 'warm-up-with-meter']).toContain(nextCheck(even, seldom).id);
});

test('a fault that is over is asked about, for no meter finds it', () => {
  expect(['ask-about-sensor', 'ask-about-wiring']).toContain(nextCheck(even, { showsShare: 0, isRepaired: true }).id);
});

test.each([
  ['sensor', 'both-ends'],
  ['wiring', 'move-the-cable'],
  ['input', 'swap-inputs'],
  ['heater', 'heater-circuit'],
] as const)('where it is surely the %s, it is proven: %s', (cause, id) => {
  expect(nextCheck({ ...even, sensor: 0, wiring: 0, [cause]: 1 }, standing).id).toBe(id);
});

test('what tells next to nothing is no first step, however quickly it is done', () => {
  const nearlySure = { sensor: 0.01, wiring: 0.01, input: 0.005, heater: 0.92, recording: 0.005, none: 0.05 };
  expect(nextCheck(nearlySure, standing).id).toBe('heater-circuit');
});

test('of a heater that works again it is asked what was done to the heater', () => {
  expect(nextCheck({ ...even, sensor: 0, wiring: 0, heater: 1 }, { showsShare: 0, isRepaired: true }).id).toBe(
    'ask-about-heater',
  );
});

test('every measurement has minutes and shares that are shares', () => {
  for (const { minutes, yes } of measurements) {
    expect(minutes).toBeGreaterThan(0);
    for (const share of Object.values(yes)) expect(share > 0 && share < 1).toBe(true);
  }
});
