import { expect, test } from 'vitest';
import { spikes } from '../../../src/detect/judges/spikes.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { evidenceOf, zoneLog } from '../../make/zone-log.js';

const spiked = (s: MadeSample) => ((s.timeMs / 60_000) % 211 === 0 && s.degC > 170 ? { ...s, degC: s.degC - 90 } : s);

test('counts the spikes of one zone with size and direction', () => {
  const made = zoneLog().filter((s) => spiked(s) !== s).length;
  const facts = factsOf(spikes, evidenceOf([zoneLog({ recorded: spiked }), zoneLog({ seed: 2 })]));
  expect(Math.abs(facts['spikeCount']! - made)).toBeLessThanOrEqual(1);
  expect(facts).toMatchObject({ upShare: 0, singleShare: 1, sharedCount: 0 });
  expect(Math.abs(facts['medianSizeDegC']! - 90)).toBeLessThan(1);
});

test('leaves out spikes that two zones share', () => {
  const evidence = evidenceOf([zoneLog({ recorded: spiked }), zoneLog({ seed: 2, recorded: spiked })]);
  expect(ask(spikes, evidence).symptoms).toEqual([]);
});
