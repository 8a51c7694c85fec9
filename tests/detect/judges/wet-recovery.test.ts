import { expect, test } from 'vitest';
import { wetRecovery } from '../../../src/detect/judges/wet-recovery.js';
import { ask, factsOf } from '../../make/ask.js';
import type { Evidence } from '../../../src/model/detector.js';
import { atHour, heatedPlant, hoursOff, rising, sound } from '../../make/digests.js';

const wet = (h: number) => (h > 46 ? -6 * Math.exp((46 - h) / 6) : 0);

test('tells a reading that goes 6 °C low at a stop and dries with a time constant of 6 hours', () => {
  const [symptom] = ask(wetRecovery, heatedPlant([{ offsetDegC: wet }, ...sound(4)])).symptoms;
  // The first cold look comes when half of a night is over; from -6 °C that leaves -3.
  expect(hoursOff(symptom!.startMs, 46)).toBeLessThan(5);
  expect(symptom!.facts['coldDepthDegC']).toBeLessThan(-2);
  expect(symptom!.facts['recoveryHours']).toBeGreaterThanOrEqual(4);
  expect(symptom!.facts['recoveryHours']).toBeLessThanOrEqual(8);
});

/** Wet after every clean-up at ten at night from the second day on, dry by the morning. */
const wetEveryNight = (h: number) => (h > 46 ? -5 * Math.exp(-((h - 22) % 24) / 3) : 0);

test('tells dips that come back night after night, and takes none where the reading goes high', () => {
  const [symptom] = ask(wetRecovery, heatedPlant([{ offsetDegC: wetEveryNight }, ...sound(4)])).symptoms;
  expect(symptom!.facts['dipCount']).toBeGreaterThanOrEqual(3);
  expect(symptom!.facts['coldDepthDegC']).toBeLessThan(-1);
  const high = { offsetDegC: (h: number) => -wetEveryNight(h) };
  expect(ask(wetRecovery, heatedPlant([high, ...sound(4)])).symptoms).toEqual([]);
});

test.each([
  ['a level that rose for good', { offsetDegC: (h: number) => (h > 70 ? 0 : -9) }],
  ['a lasting step', { offsetDegC: (h: number) => (h > 60 ? -3 : 0) }],
  ['a drift', { offsetDegC: rising(60, -5) }],
  ['a sound zone', {}],
])('is silent on %s', (_, zone) => {
  expect(ask(wetRecovery, heatedPlant([zone, ...sound(4)])).symptoms).toEqual([]);
});

test('cannot tell of two zones of which only readings are logged', () => {
  const evidence = heatedPlant(sound(2), { days: 2, hasOutput: false, hasSetpoint: false });
  expect(ask(wetRecovery, evidence).unable).toMatch(/needed 3/);
  expect(factsOf(wetRecovery, evidence)).toEqual({});
});

/** Small leaks after each washing, from the third day on: one alone is a draught, all of them together are none. */
const dampAfterWash = (h: number) => (h > 70 && h < 190 ? -1.6 * Math.exp(-((h - 22) % 24) / 4) : 0);

const cleaned = (evidence: Evidence): Evidence => ({
  ...evidence,
  stops: [0, 1, 2, 3, 4, 5].map((day) => ({
    startMs: atHour(24 * day + 21.7),
    endMs: atHour(24 * day + 22),
    machine: null,
    reason: 'Cleaning',
    isPlanned: true,
    zone: null,
    isWashDown: true,
  })),
});

test('puts small dips after listed wash-downs together, where none of them would count alone', () => {
  const plant = heatedPlant([{ offsetDegC: dampAfterWash }, ...sound(4)]);
  const washed = ask(wetRecovery, cleaned(plant)).symptoms[0];
  expect(washed!.facts['washDownCount']).toBeGreaterThanOrEqual(3);
  expect(washed!.facts['coldDepthDegC']).toBeLessThan(-0.5);
  expect(hoursOff(washed!.startMs, 70)).toBeLessThan(26);
  expect(factsOf(wetRecovery, plant)['washDownCount']).toBeUndefined();
  for (const zone of plant.zones.slice(1)) expect(ask(wetRecovery, cleaned(plant), zone.index).symptoms).toEqual([]);
});
