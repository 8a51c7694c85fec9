import { expect, test } from 'vitest';
import { slowDrift } from '../../../src/detect/judges/slow-drift.js';
import { offsetStep } from '../../../src/detect/judges/offset-step.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, rising, sound } from '../../make/digests.js';

test('finds size and onset of an even drift of 4 °C', () => {
  const evidence = heatedPlant([{ offsetDegC: rising(60, 4) }, ...sound(4)]);
  const [symptom] = ask(slowDrift, evidence).symptoms;
  expect(Math.abs(symptom!.facts['offsetDegC']! - 4)).toBeLessThan(0.3);
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(4);
  expect(symptom!.facts['leavesToleranceHours']).toBe(0);
});

test('takes the value at the working temperature of a drift that grows with it', () => {
  const share = (h: number) => -0.05 * rising(60, 1)(h);
  const facts = factsOf(slowDrift, heatedPlant([{ offsetDegC: (h, degC) => share(h) * degC }, ...sound(4)]));
  // 5 % of the true temperature T, read as 150: T·0.95 = 150, so T = 157.9 and the reading is 7.9 low.
  // Cold it is a seventh of that: an error that grows from 0 °C explains both, whatever a degree costs in duty.
  expect(Math.abs(facts['offsetDegC']! + 7.9)).toBeLessThan(0.8);
  expect(Math.abs(facts['offsetDegC']! + 7.9)).toBeLessThan(2 * facts['uncertaintyDegC']!);
  expect(facts['coldShare']).toBeLessThan(0.25);
});

test('works from the nights alone where only readings are logged', () => {
  const zones = [{ offsetDegC: rising(60, 4) }, ...sound(4)];
  const facts = factsOf(slowDrift, heatedPlant(zones, { hasOutput: false, hasSetpoint: false }));
  expect(Math.abs(facts['offsetDegC']! - 4)).toBeLessThan(0.3);
  expect(facts['uncertaintyDegC']).toBeGreaterThan(0.4);
  // If it grows from 0 °C, 4 °C in nights of 16 to 20 °C are eight to nine times as much at 150 °C.
  expect(facts['grownOffsetDegC']).toBeGreaterThan(24);
  expect(facts['grownOffsetDegC']).toBeLessThan(40);
});

test('projects when a small drift will leave its tolerance', () => {
  const facts = factsOf(slowDrift, heatedPlant([{ offsetDegC: rising(60, 0.7) }, ...sound(4)]));
  // Class B at 150 °C is 1.05 °C (IEC 60751: 0.3 + 0.005·t); 0.7 °C in 132 h leaves 66 h to go.
  expect(facts['leavesToleranceHours']).toBeGreaterThan(30);
  expect(facts['leavesToleranceHours']).toBeLessThan(120);
});

test.each([
  ['a heater that loses half its power', { power: (h: number) => (h > 60 ? 0.5 : 1) }],
  ['a step', { offsetDegC: (h: number) => (h > 60 ? 2 : 0) }],
])('is silent on %s', (_, zone) => {
  expect(ask(slowDrift, heatedPlant([zone, ...sound(4)])).symptoms).toEqual([]);
});

test('is silent on a sound plant in whole degrees, and cannot tell of one that is never cold without output', () => {
  const coarse = heatedPlant(sound(5), { digits: 0 });
  for (const zone of coarse.zones) expect(ask(slowDrift, coarse, zone.index).symptoms).toEqual([]);
  const shift = { fromHour: 0, toHour: 24 };
  const blind = heatedPlant(sound(3), { days: 4, shift, hasOutput: false, hasSetpoint: false });
  expect(ask(slowDrift, blind).unable).toMatch(/never cold.*no output/);
  // With an output a large drift would show, a small one not: 6 % of 130 °C above the room is 8 °C.
  const dutyOnly = heatedPlant(sound(3), { days: 4, shift });
  expect(ask(slowDrift, dutyOnly).unable).toMatch(/never cold.*below [78]\.\d °C does not show/);
});

test('tells a small drift that the soaks show clearly, also where an ageing heater moves the duty by more', () => {
  const more = (h: number) => 1 / (1 + rising(60, 0.25)(h));
  const evidence = heatedPlant([{ offsetDegC: rising(60, -0.6), power: more }, ...sound(4)]);
  const { symptoms } = ask(slowDrift, evidence);
  expect(symptoms).toHaveLength(1);
  expect(symptoms[0]!.facts['coldOffsetDegC']).toBeCloseTo(-0.6, 1);
});

test('says since when it cannot tell, where the last weekend is four days back', () => {
  const evidence = heatedPlant(sound(4), { days: 18, shift: { fromHour: 0, toHour: 24 } });
  expect(ask(slowDrift, evidence).unable).toMatch(
    /no drift up to 4\.0 days before the end.*below [\d.]+ °C does not show/,
  );
});

test('takes a quarter of a degree for a drift where every night shows it', () => {
  const small = (h: number) => (h > 70 ? 0.25 : 0);
  const clear = heatedPlant([{ offsetDegC: small }, ...sound(5)], { days: 12, digits: 2 });
  expect(ask(offsetStep, clear).symptoms[0]?.facts['coldOffsetDegC']).toBeCloseTo(0.25, 1);
});
