import { expect, test } from 'vitest';
import { offsetStep } from '../../../src/detect/judges/offset-step.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, rising, sound } from '../../make/digests.js';

test('finds size and time of a step of 2 °C', () => {
  const evidence = heatedPlant([{ offsetDegC: (h) => (h > 60 ? 2 : 0) }, ...sound(4)]);
  const [symptom] = ask(offsetStep, evidence).symptoms;
  expect(Math.abs(symptom!.facts['offsetDegC']! - 2)).toBeLessThan(0.2);
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(3);
});

test.each([
  ['an even drift', { offsetDegC: rising(60, 4) }],
  ['a sound zone', {}],
  ['a weak heater', { power: (h: number) => (h > 60 ? 0.6 : 1) }],
])('is silent on %s', (_, zone) => {
  expect(ask(offsetStep, heatedPlant([zone, ...sound(4)])).symptoms).toEqual([]);
});

test('cannot tell of two zones', () => {
  expect(ask(offsetStep, heatedPlant(sound(2), { days: 2 })).unable).toMatch(/needed 3/);
  expect(factsOf(offsetStep, heatedPlant(sound(2), { days: 2 }))).toEqual({});
});
