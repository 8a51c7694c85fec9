import { expect, test } from 'vitest';
import { codeValue } from '../../../src/detect/judges/code-value.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { DAY_MS, evidenceOf, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

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

test('learns a code that lies among real temperatures, from the ways into it', () => {
  // Ten minutes every day while hot; on the last day a long stay behind a hole, of which the log shows no beginning.
  const isStay = (ms: number) => (ms / 60_000) % 1440 >= 900 && (ms / 60_000) % 1440 < 910;
  const isHole = (ms: number) => ms >= MONDAY_MS + 3.6 * DAY_MS && ms < MONDAY_MS + 3.61 * DAY_MS;
  const isLong = (ms: number) => ms >= MONDAY_MS + 3.61 * DAY_MS && ms < MONDAY_MS + 3.7 * DAY_MS;
  const log = zoneLog({
    recorded: (s) => (isHole(s.timeMs) ? null : isStay(s.timeMs) || isLong(s.timeMs) ? { ...s, degC: 100 } : s),
  });
  const facts = factsOf(codeValue, evidenceOf([log, zoneLog({ seed: 2 })]));
  expect(facts).toMatchObject({ valueDegC: 100, spanCount: 4, isAboveCount: 0, isBelowCount: 0 });
  expect(facts['longestMinutes']!).toBeGreaterThan(0.08 * 24 * 60);
  expect(facts['sampleCount']!).toBeGreaterThanOrEqual(log.filter((s) => s.degC === 100).length - 10);
});

test('does not take a value that many wild jumps hit by chance for a code', () => {
  let count = 0;
  const wild = (s: MadeSample) => {
    if ((s.timeMs / 60_000) % 31 !== 0) return s;
    count++;
    return { ...s, degC: count % 40 === 0 ? 311.3 : 230 + 1.3 * count };
  };
  expect(ask(codeValue, evidenceOf([zoneLog({ recorded: wild })])).symptoms).toEqual([]);
});

test.each([
  [2, 2],
  [8, 0],
])('of %i values that a reading hops between, %i are codes: steps of a coarse reading are none', (values, codes) => {
  const stay = (s: MadeSample) => Math.floor((s.timeMs - MONDAY_MS) / (13 * 60_000));
  const hops = (s: MadeSample) => (stay(s) % 3 === 0 ? { ...s, degC: 240 + 15 * ((stay(s) / 3) % values) } : s);
  expect(ask(codeValue, evidenceOf([zoneLog({ recorded: hops })])).symptoms).toHaveLength(codes);
});
