import { expect, test } from 'vitest';
import { peerResidual } from '../../../src/detect/judges/peer-residual.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';

const readingsOnly = { hasOutput: false, hasSetpoint: false };

test('tells a zone that falls away while its peers keep their temperatures', () => {
  const fading = { power: (h: number) => (h > 58 && h < 70 ? Math.max(0.1, 1 - (h - 58) / 6) : 1) };
  const [symptom] = ask(peerResidual, heatedPlant([fading, ...sound(4)], readingsOnly)).symptoms;
  expect(hoursOff(symptom!.startMs, 61)).toBeLessThan(3);
  expect(symptom!.facts['residualDegC']).toBeLessThan(-10);
});

test('is silent on sound zones, and when all zones fade together', () => {
  const evidence = heatedPlant(sound(5), readingsOnly);
  for (const zone of evidence.zones) expect(ask(peerResidual, evidence, zone.index).symptoms).toEqual([]);
  const all = Array.from({ length: 4 }, () => ({ power: (h: number) => (h > 58 && h < 70 ? 0.3 : 1) }));
  expect(ask(peerResidual, heatedPlant(all, readingsOnly)).symptoms).toEqual([]);
});

test('cannot tell without peers', () => {
  const alone = heatedPlant(sound(1), { ...readingsOnly, days: 2 });
  expect(ask(peerResidual, alone).unable).toMatch(/0 peers, needed 2/);
  expect(factsOf(peerResidual, alone)).toEqual({});
});
