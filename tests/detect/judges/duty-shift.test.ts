import { expect, test } from 'vitest';
import { dutyShift } from '../../../src/detect/judges/duty-shift.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

test('tells the heat that a zone needs less when its sensor reads 6 °C high', () => {
  const evidence = heatedPlant([{ offsetDegC: (h) => (h > 60 ? 6 : 0) }, ...sound(4)]);
  const [symptom] = ask(dutyShift, evidence).symptoms;
  expect(symptom!.facts['residualDegC']).toBeGreaterThan(5.4);
  expect(symptom!.facts['residualDegC']).toBeLessThan(6.6);
  expect(symptom!.facts['residualPercent']).toBeLessThan(0);
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(3);
});

test('is silent when the load of the whole machine grows by half', () => {
  const evidence = heatedPlant(sound(5), { load: (h) => (h > 60 ? 1.5 : 1) });
  for (const zone of evidence.zones) expect(ask(dutyShift, evidence, zone.index).symptoms).toEqual([]);
});

test('cannot tell without an output', () => {
  expect(ask(dutyShift, heatedPlant(sound(4), { days: 2, hasOutput: false })).unable).toMatch(/no output/);
});

test('says how much more heat there was before: half the heater, twice the duty', () => {
  const facts = factsOf(dutyShift, heatedPlant([{ power: (h) => (h > 60 ? 0.5 : 1) }, ...sound(4)]));
  expect(facts['dutyRatio']).toBeGreaterThan(1.7);
  expect(facts['dutyRatio']).toBeLessThan(2.2);
});
