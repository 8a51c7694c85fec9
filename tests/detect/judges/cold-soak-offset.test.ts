import { expect, test } from 'vitest';
import { coldSoakOffset } from '../../../src/detect/judges/cold-soak-offset.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, rising, sound } from '../../make/digests.js';

test('reads the offset of a sensor that is 2 °C high from the nights', () => {
  const evidence = heatedPlant([{ offsetDegC: (h) => (h > 60 ? 2 : 0) }, ...sound(4)]);
  const facts = factsOf(coldSoakOffset, evidence);
  expect(facts['offsetDegC']).toBeCloseTo(2, 1);
  expect(facts['changeDegC']).toBeCloseTo(2, 1);
  expect(facts['peerCount']).toBeGreaterThanOrEqual(3); // the slowest peer is not cold in the first hour of a night
});

test('takes the lag of a slow zone for no offset, nor a constant one within tolerance', () => {
  const zones = [{ tauMinutes: 60 }, { offsetDegC: () => 0.35 }, ...sound(3)];
  for (const outcome of coldSoakOffset.judge(heatedPlant(zones), coldSoakOffset.meta.defaults)) {
    expect(outcome.symptoms).toEqual([]);
    expect(outcome.unable).toBeUndefined();
  }
});

test('a drifting peer does not make the others drift', () => {
  const evidence = heatedPlant([{ offsetDegC: rising(40, 5) }, ...sound(2)]);
  expect(ask(coldSoakOffset, evidence, 1).symptoms).toEqual([]);
  expect(ask(coldSoakOffset, evidence, 2).symptoms).toEqual([]);
});

test('cannot tell of a plant that is never cold, nor of two zones', () => {
  const hot = heatedPlant(sound(4), { days: 3, shift: { fromHour: 0, toHour: 24 } });
  const { unable } = ask(coldSoakOffset, { ...hot, digest: hot.digest });
  expect(unable).toMatch(/never cold/);
  expect(ask(coldSoakOffset, heatedPlant(sound(2), { days: 2 })).unable).toMatch(/2 zones, needed 3/);
});
