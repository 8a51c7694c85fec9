import { expect, test } from 'vitest';
import { coolDown } from '../../../src/detect/judges/cool-down.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, sound } from '../../make/digests.js';

/** A cover left off makes a zone lose its heat faster: told to the maker as a reading that falls ahead of the truth. */
const uncovered = (h: number, degC: number): number =>
  h > 60 && degC < 140 ? -0.35 * Math.max(0, degC - 20) * (1 - degC / 150) : 0;

test('tells cool-downs that became quicker on one zone', () => {
  const facts = factsOf(coolDown, heatedPlant([{ tauMinutes: 40, offsetDegC: uncovered }, ...sound(4)]));
  expect(facts['tauRatio']).toBeLessThan(0.87);
  expect(facts['afterMinutes']).toBeLessThan(facts['beforeMinutes']!);
});

test('is silent on sound zones and on a constant offset', () => {
  const evidence = heatedPlant([{ offsetDegC: (h) => (h > 60 ? 3 : 0) }, ...sound(4)]);
  for (const zone of evidence.zones) expect(ask(coolDown, evidence, zone.index).symptoms).toEqual([]);
});

test('measures the time constant the plant was made with', () => {
  const facts = factsOf(coolDown, heatedPlant([{ tauMinutes: 40, offsetDegC: uncovered }, ...sound(4)]));
  // The room falls meanwhile by some degrees, which draws the fit out by up to a tenth.
  expect(Math.abs(facts['beforeMinutes']! - 40)).toBeLessThan(4);
});

test('cannot tell from two days', () => {
  expect(ask(coolDown, heatedPlant(sound(3), { days: 2 })).unable).toMatch(/cool-downs.*needed 4/);
});
