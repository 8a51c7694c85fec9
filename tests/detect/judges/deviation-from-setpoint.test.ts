import { expect, test } from 'vitest';
import { deviationFromSetpoint } from '../../../src/detect/judges/deviation-from-setpoint.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

test('tells a zone that stays away from its set point', () => {
  const evidence = heatedPlant([{ power: (h) => (h > 60 ? 0 : 1) }, ...sound(4)]);
  const [symptom] = ask(deviationFromSetpoint, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(1);
  expect(symptom!.facts['deviationDegC']).toBeLessThan(-100);
  expect(symptom!.facts['outputPercent']).toBe(100);
});

test('tells a zone that falls again and again, each time for minutes', () => {
  const comesAndGoes = (h: number): number => (h > 60 && h % 1 < 0.3 ? 0 : 1);
  const [symptom] = ask(deviationFromSetpoint, heatedPlant([{ power: comesAndGoes }, ...sound(4)])).symptoms;
  expect(symptom!.facts['fallCount']).toBeGreaterThan(10);
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(2);
});

test('is silent on slow heat-ups and when the supply of all zones fails', () => {
  const slow = heatedPlant([{ tauMinutes: 150 }, ...sound(4)], { days: 4 });
  expect(ask(deviationFromSetpoint, slow).symptoms).toEqual([]);
  const cut = heatedPlant(Array.from({ length: 4 }, () => ({ power: (h: number) => (h > 60 && h < 63 ? 0 : 1) })));
  for (const zone of cut.zones) expect(ask(deviationFromSetpoint, cut, zone.index).symptoms).toEqual([]);
});

test('gives a zone that was off its time to heat up, though its set point comes back as it was', () => {
  const late = heatedPlant([{ power: (h) => (h > 29 && h < 31.3 ? 0 : 1) }, ...sound(4)], { days: 3 });
  expect(ask(deviationFromSetpoint, late).symptoms).toEqual([]);
});

test('counts the time of heat in a log with a reading every five minutes', () => {
  const plan = { everyMinutes: 5, days: 0.4 }; // on for three and a half hours
  expect(ask(deviationFromSetpoint, heatedPlant(sound(4), plan))).not.toHaveProperty('unable');
  const low = heatedPlant([{ power: (h) => (h > 60 ? 0 : 1) }, ...sound(4)], { everyMinutes: 5 });
  expect(factsOf(deviationFromSetpoint, low)['onTimeShare']).toBeLessThan(1);
});

test('cannot tell without a set point', () => {
  const evidence = heatedPlant(sound(3), { days: 2, hasSetpoint: false });
  expect(ask(deviationFromSetpoint, evidence).unable).toMatch(/no set point/);
  expect(factsOf(deviationFromSetpoint, evidence)).toEqual({});
});
