import { expect, test } from 'vitest';
import { heaterDead } from '../../../src/detect/judges/heater-dead.js';
import { readingLowShorted } from '../../../src/detect/judges/reading-low-shorted.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, sound, type HeatedPlant, type HeatedZone } from '../../make/digests.js';

// A zone that should be hot and reads cold, in logs of some minutes a row and where the fault began cold: whether the
// heat or the signal is gone is told by how the reading went and by how it came back.

const nearRoom = (h: number): number => 24 + 0.3 * Math.sin(7 * h);
const logs: Record<string, HeatedPlant> = {
  'a row a minute': {},
  'a row every three minutes': { everyMinutes: 3 },
  'a row every five minutes': { everyMinutes: 5 },
};
const hot: HeatedZone = { shownDegC: (h) => (h > 60.03 && h < 64.03 ? nearRoom(h) : null) };
// Between shifts, at 22 o'clock and 6 o'clock, all is cold: at hour 50 the machine stands, at 58 it has long started.
const cold: HeatedZone = { shownDegC: (h) => (h > 50.03 && h < 58.03 ? nearRoom(h) : null) };

test.each(Object.entries(logs))('a short while hot is a lost signal, %s', (_, plan) => {
  const evidence = heatedPlant([hot, ...sound(4)], plan);
  expect(ask(readingLowShorted, evidence).symptoms).toHaveLength(1);
  expect(ask(heaterDead, evidence).symptoms).toEqual([]);
});

test.each(Object.entries(logs))('so is one that began cold: the body was heated all the while, %s', (_, plan) => {
  const evidence = heatedPlant([cold, ...sound(4)], plan);
  expect(factsOf(readingLowShorted, evidence)['backAtDegC']).toBeGreaterThan(200); // it should be at 150 °C
  expect(ask(heaterDead, evidence).symptoms).toEqual([]);
});

test.each(Object.entries(logs))('a heater that was dead from cold on and was mended is a heater, %s', (_, plan) => {
  const mended: HeatedZone = { power: (h) => (h > 50 && h < 58 ? 0 : 1) };
  const evidence = heatedPlant([mended, ...sound(4)], plan);
  expect(ask(heaterDead, evidence).symptoms).toHaveLength(1);
  expect(ask(readingLowShorted, evidence).symptoms).toEqual([]);
});

test('its own way back is no heat-up to hold it against', () => {
  // One day in the log: the only rise from cold of this zone is the end of its short.
  const evidence = heatedPlant([{ shownDegC: (h) => (h > 5 && h < 12.03 ? nearRoom(h) : null) }, ...sound(4)], {
    days: 1,
  });
  expect(factsOf(readingLowShorted, evidence)['endJumpRatio']).toBeGreaterThan(3);
});
