import { expect, test } from 'vitest';
import { stuckReading } from '../../../src/detect/judges/stuck-reading.js';
import { ask, factsOf } from '../../make/ask.js';
import { DAY_MS, evidenceOf, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const others = [zoneLog({ seed: 2 }), zoneLog({ seed: 3 })];
const from = MONDAY_MS + 2.5 * DAY_MS;

test('tells a reading that stands while its output and its neighbours move', () => {
  const log = zoneLog({ recorded: (s, before) => (s.timeMs > from && before ? { ...s, degC: before.degC } : s) });
  const facts = factsOf(stuckReading, evidenceOf([log, ...others]));
  expect(facts['longestMinutes']!).toBeGreaterThan(1.4 * 24 * 60);
  expect(facts['outputRangePercent']!).toBeGreaterThan(20);
  expect(facts['movedPeersShare']).toBe(1);
});

test('is silent on settled zones in whole degrees', () => {
  const logs = [1, 2, 3].map((seed) => zoneLog({ seed, resolutionDegC: 1 }));
  const zones = logs.map((_, index) => zoneOfLog(index, { resolutionDegC: 1 }));
  for (const zone of [0, 1, 2]) expect(ask(stuckReading, evidenceOf(logs, { zones }), zone).symptoms).toEqual([]);
});

test('cannot tell of a single zone without output', () => {
  const has = { reading: true, setpoint: false, output: false, running: false };
  const zones = [zoneOfLog(0, { has })];
  expect(ask(stuckReading, evidenceOf([zoneLog()], { zones })).unable).toMatch(/nothing shows what should have moved/);
});
