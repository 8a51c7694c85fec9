import { expect, test } from 'vitest';
import { outputStuckOn } from '../../../src/detect/judges/output-stuck-on.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

test('finds the two hours in which the output device was stuck on', () => {
  const evidence = heatedPlant([{ isStuckOn: (h) => h > 60 && h < 62 }, ...sound(4)]);
  const [symptom] = ask(outputStuckOn, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(0.5);
  expect(symptom!.facts['largestAboveDegC']).toBeGreaterThan(100);
});

test('says how far above the set point of the time, be it higher than usual', () => {
  const evidence = heatedPlant([{ isStuckOn: (h) => h > 60 && h < 62 }, ...sound(4)]);
  const { maxDegC, setpointDegC } = evidence.digest.zones[0]!;
  setpointDegC.fill(250, 60 * 60, 62 * 60 + 30);
  const facts = factsOf(outputStuckOn, evidence);
  expect(facts['largestAboveDegC']).toBeCloseTo(Math.max(...maxDegC.subarray(60 * 60, 63 * 60)) - 250, 3);
});

test('is silent on a zone that cools after switching off, and on one in whole degrees', () => {
  for (const digits of [1, 0]) {
    const evidence = heatedPlant(sound(4), { days: 4, digits });
    expect(ask(outputStuckOn, evidence).symptoms).toEqual([]);
  }
});

test('cannot tell without an output', () => {
  const evidence = heatedPlant(sound(4), { days: 2, hasOutput: false });
  expect(ask(outputStuckOn, evidence).unable).toMatch(/without its output/);
  expect(factsOf(outputStuckOn, evidence)).toEqual({});
});
