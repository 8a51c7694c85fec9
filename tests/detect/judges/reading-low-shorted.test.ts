import { expect, test } from 'vitest';
import { heaterDead } from '../../../src/detect/judges/heater-dead.js';
import { heaterWeak } from '../../../src/detect/judges/heater-weak.js';
import { readingLowShorted } from '../../../src/detect/judges/reading-low-shorted.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

const shorted = { shownDegC: (h: number) => (h > 60 && h < 64 ? 24 + 0.3 * Math.sin(7 * h) : null) };

test('finds the hours in which a thermocouple is shorted', () => {
  const evidence = heatedPlant([shorted, ...sound(4)]);
  const [symptom] = ask(readingLowShorted, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(0.5);
  expect(hoursOff(symptom!.endMs, 64)).toBeLessThan(0.5);
  expect(symptom!.facts['readingDegC']).toBeGreaterThan(23);
  expect(symptom!.facts['fallRatio']).toBeGreaterThan(2);
});

test.each([2, 5])('tells it from a dead heater in a log with a reading every %i minutes', (everyMinutes) => {
  const shownDegC = (h: number) => (h > 60 && h < 70 ? 24 + 0.3 * Math.sin(7 * h) : null);
  // The log ends in it: only the fall at its start tells.
  const evidence = heatedPlant([{ shownDegC }, ...sound(4)], { everyMinutes, days: 65 / 24 });
  expect(factsOf(readingLowShorted, evidence)['fallRatio']).toBeGreaterThan(2);
  expect(ask(heaterDead, evidence).symptoms).toEqual([]);
});

test('finds it again at the same level the next day, and leaves the heater alone', () => {
  // Warm terminals at 80 °C under full output; on the second day the run begins low, without a fall.
  const level = (h: number) => 80 + 2 * Math.sin(7 * h);
  const shownDegC = (h: number) => (h > 56 ? level(h) : null);
  const evidence = heatedPlant([{ shownDegC }, ...sound(4)], { days: 4 });
  expect(factsOf(readingLowShorted, evidence)['lowMinutes']!).toBeGreaterThan(25 * 60);
  expect(ask(heaterDead, evidence).symptoms).toEqual([]);
  expect(factsOf(heaterWeak, evidence)['fullOutputMinutes'] ?? 0).toBe(0);
});

test.each([1, 2, 5])('is silent on a dead heater and on a sound zone, read every %i minutes', (everyMinutes) => {
  const evidence = heatedPlant([{ power: (h) => (h > 60 ? 0 : 1) }, ...sound(4)], { everyMinutes });
  expect(factsOf(heaterDead, evidence)['fallRatio'] ?? NaN).not.toBeGreaterThan(2);
  expect(ask(readingLowShorted, evidence, 0).symptoms).toEqual([]);
  expect(factsOf(readingLowShorted, evidence, 1)).toEqual({});
});

test('cannot tell of a zone that was never settled', () => {
  const evidence = heatedPlant([{ power: () => 0 }, ...sound(3)], { days: 3 });
  expect(ask(readingLowShorted, evidence).unable).toMatch(/never settled/);
});
