import { expect, test } from 'vitest';
import { heaterWeak } from '../../../src/detect/judges/heater-weak.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, rising, sound } from '../../make/digests.js';

test.each([0.5, 0.7])('tells a heater with %d of its power', (share) => {
  const evidence = heatedPlant([{ power: (h) => (h > 60 ? share : 1) }, ...sound(4)]);
  const [symptom] = ask(heaterWeak, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(2);
  expect(symptom!.facts['dutyRatio']).toBeGreaterThan(0.85 / share);
  expect(symptom!.facts['dutyRatio']).toBeLessThan(1.15 / share);
  expect(Math.abs(symptom!.facts['soakChangeDegC']!)).toBeLessThan(0.1);
  expect(symptom!.facts['heatUpRatio']).toBeLessThan(0.9);
});

test('tells an element that ages until it needs more than twice its duty', () => {
  const ageing = (h: number): number => (h > 60 ? 1 / (1 + (h - 60) / 60) : 1);
  const [symptom] = ask(heaterWeak, heatedPlant([{ power: ageing }, ...sound(4)], { days: 6 })).symptoms;
  expect(symptom!.facts['dutyRatio']).toBeGreaterThan(1.5);
  expect(symptom!.facts['isStepCount']).toBe(0);
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(30);
});

test('tells full output that does not suffice', () => {
  const facts = factsOf(heaterWeak, heatedPlant([{ power: (h) => (h > 60 ? 0.35 : 1) }, ...sound(4)]));
  expect(facts['fullOutputMinutes']).toBeGreaterThan(300);
});

test('counts the minutes of a log with a reading every five of them', () => {
  const minutes = [1, 5].map((everyMinutes) => {
    const evidence = heatedPlant([{ power: (h) => (h > 60 ? 0.35 : 1) }, ...sound(4)], { everyMinutes });
    return factsOf(heaterWeak, evidence)['fullOutputMinutes']!;
  });
  expect(minutes[1]! / minutes[0]!).toBeCloseTo(1, 1);
});

test('is silent on a drifting sensor, on load for all and on a slow zone', () => {
  const drift = heatedPlant([{ offsetDegC: rising(60, -8) }, ...sound(4)]);
  expect(ask(heaterWeak, drift).symptoms).toEqual([]);
  const farLow = heatedPlant([{ offsetDegC: (h) => (h > 60 ? -20 : 0) }, ...sound(4)]);
  expect(ask(heaterWeak, farLow).symptoms).toEqual([]);
  const load = heatedPlant([{ tauMinutes: 60 }, ...sound(4)], { load: (h) => (h > 60 ? 1.5 : 1) });
  for (const zone of load.zones) expect(ask(heaterWeak, load, zone.index).symptoms).toEqual([]);
});

test('knows a capped output as full', () => {
  const capped = heatedPlant([{ power: (h) => (h > 60 ? 0.3 : 1) }, ...sound(4)], { outputCap: 0.8 });
  expect(ask(heaterWeak, capped).symptoms).toHaveLength(1);
  for (const zone of capped.zones.slice(1)) expect(ask(heaterWeak, capped, zone.index).symptoms).toEqual([]);
});

test('cannot tell without an output', () => {
  expect(ask(heaterWeak, heatedPlant(sound(4), { days: 2, hasOutput: false })).unable).toMatch(/no output/);
});
