import { expect, test } from 'vitest';
import { heatUp } from '../../../src/detect/judges/heat-up.js';
import { heatUpsOf } from '../../../src/detect/shared/heating/heat-ups.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

const slow = { tauMinutes: 40 };

test('tells heat-ups that became slower by a third', () => {
  const evidence = heatedPlant([{ ...slow, power: (h) => (h > 60 ? 0.67 : 1) }, slow, slow, slow]);
  const [symptom] = ask(heatUp, evidence).symptoms;
  // Full power falls by 0.67 while the losses on the way stay, so the slope falls by more: 0.5 to 0.67.
  expect(symptom!.facts['slopeRatio']).toBeGreaterThan(0.45);
  expect(symptom!.facts['slopeRatio']).toBeLessThan(0.7);
  expect(hoursOff(symptom!.startMs, 78)).toBeLessThan(1); // the first heat-up after hour 60
});

test('is silent when low mains makes all zones slower, and on a drifting sensor', () => {
  const all = Array.from({ length: 4 }, () => ({ ...slow, power: (h: number) => (h > 60 ? 0.8 : 1) }));
  for (const zone of [0, 1, 2, 3]) expect(ask(heatUp, heatedPlant(all), zone).symptoms).toEqual([]);
  const drift = [{ ...slow, offsetDegC: (h: number) => (h > 60 ? 3 : 0) }, slow, slow, slow];
  expect(ask(heatUp, heatedPlant(drift)).symptoms).toEqual([]);
});

test.each([1, 5, 10, 15])('finds the heat-up of each day in a log with a reading every %i minutes', (everyMinutes) => {
  const slow = { tauMinutes: 120 };
  const heatUps = heatUpsOf(heatedPlant([slow, slow], { everyMinutes, days: 4 }))[0]!;
  expect(heatUps.length).toBe(4);
  for (const { toDegC } of heatUps) expect(toDegC).toBeGreaterThan(135);
});

test('cannot tell from two days, nor from a quick zone logged every five minutes', () => {
  expect(ask(heatUp, heatedPlant([slow, slow, slow], { days: 2 })).unable).toMatch(/heat-ups from cold \d, needed 4/);
  const quick = heatedPlant([{ tauMinutes: 6 }, ...sound(2)], { everyMinutes: 5 });
  expect(ask(heatUp, quick).unable).toMatch(/logged too slowly/);
  expect(factsOf(heatUp, quick)).toEqual({});
});
