import { expect, test } from 'vitest';
import { codeValue } from '../../../src/detect/judges/code-value.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { evidenceOf, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const coded = (value: number, minutes: number) => (s: MadeSample) =>
  (s.timeMs / 60_000) % (minutes * 7) < 0.6 ? { ...s, degC: value } : s;

test('learns a code that no list knows, on two zones', () => {
  const logs = [zoneLog({ recorded: coded(611.3, 61) }), zoneLog({ seed: 2, recorded: coded(611.3, 53) })];
  const evidence = evidenceOf(logs);
  expect(factsOf(codeValue, evidence)).toMatchObject({ valueDegC: 611.3, otherZonesCount: 1, isAboveCount: 1 });
  expect(factsOf(codeValue, evidence)['spanCount']!).toBeGreaterThanOrEqual(8);
});

test('does not take a set point held for hours in whole degrees for a code', () => {
  const log = zoneLog({ resolutionDegC: 1 });
  expect(ask(codeValue, evidenceOf([log], { zones: [zoneOfLog(0, { resolutionDegC: 1 })] })).symptoms).toEqual([]);
});

test('does not take spikes of different heights for a code', () => {
  let count = 0;
  const log = zoneLog({ recorded: (s) => ((s.timeMs / 60_000) % 397 === 0 ? { ...s, degC: 300 + 1.7 * count++ } : s) });
  expect(ask(codeValue, evidenceOf([log])).symptoms).toEqual([]);
});
