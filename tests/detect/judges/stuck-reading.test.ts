import { expect, test } from 'vitest';
import { frozenRecord } from '../../../src/detect/judges/frozen-record.js';
import { stuckReading } from '../../../src/detect/judges/stuck-reading.js';
import { ask, factsOf } from '../../make/ask.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const others = [zoneLog({ seed: 2 }), zoneLog({ seed: 3 })];
const from = MONDAY_MS + 2.5 * DAY_MS;

test('tells a reading that stands while its output and its neighbours move', () => {
  const log = zoneLog({ recorded: (s, before) => (s.timeMs > from && before ? { ...s, degC: before.degC } : s) });
  const facts = factsOf(stuckReading, evidenceOf([log, ...others]));
  expect(facts['longestMinutes']!).toBeGreaterThan(1.4 * 24 * 60);
  expect(facts['outputRangePercent']!).toBeGreaterThan(20);
  expect(facts['movedPeersShare']).toBe(1);
});

test('tells a cold reading that stands while the room moves all others, and while they heat up', () => {
  // The made room stands at 22 °C; here it swings by 3 °C either way over the day, in readings and peers alike.
  const room = (ms: number) => 3 * Math.sin((2 * Math.PI * ms) / DAY_MS);
  const coldFrom = MONDAY_MS + 2 * DAY_MS; // Wednesday, midnight
  const swinging = (seed: number, freezeUntilMs: number) => {
    let held = NaN;
    return zoneLog({ seed }).map((s) => {
      const isCold = s.degC < 40;
      const degC = Number((s.degC + (isCold ? room(s.timeMs) : 0)).toFixed(1));
      if (s.timeMs < coldFrom || s.timeMs > freezeUntilMs) return { ...s, degC };
      held = Number.isNaN(held) ? degC : held;
      return { ...s, degC: held };
    });
  };
  const peers = [2, 3, 4].map((seed) => swinging(seed, 0));
  const zones = [0, 1, 2, 3].map((index) => zoneOfLog(index));
  const cold = evidenceOf([swinging(1, coldFrom + 5.5 * 3_600_000), ...peers], { zones });
  expect(factsOf(stuckReading, cold)['longestMinutes']!).toBeGreaterThan(5 * 60);
  for (const zone of [1, 2, 3]) expect(ask(stuckReading, cold, zone).symptoms).toEqual([]);
  const bare = zones.map((zone) => ({
    ...zone,
    has: { reading: true, setpoint: false, output: false, running: false },
  }));
  const readingsOnly = [swinging(1, coldFrom + DAY_MS), ...peers].map((log) =>
    log.map(({ timeMs, degC }) => ({ timeMs, degC })),
  );
  const heated = factsOf(stuckReading, evidenceOf(readingsOnly, { zones: bare }));
  expect(heated['longestMinutes']!).toBeGreaterThan(23 * 60);
  expect(heated['peerRangeDegC']!).toBeGreaterThan(100);
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

test('tells a value that the reading jumps to and keeps, with nothing else logged', () => {
  // Seven hours at exactly 31.2 °C in a reading that else never rests; live before and behind.
  const has = { reading: true, setpoint: false, output: false, running: false };
  const zones = [zoneOfLog(0, { has })];
  const isPut = (ms: number) => ms > from && ms < from + 7 * HOUR_MS;
  const put = zoneLog({ recorded: (s) => (isPut(s.timeMs) ? { ...s, degC: 31.2 } : s) });
  const facts = factsOf(stuckReading, evidenceOf([put], { zones }));
  expect(facts).toMatchObject({ stuckCount: 1, jumpedToCount: 1, valueDegC: 31.2 });
  expect(facts['longestMinutes']!).toBeCloseTo(7 * 60, -1);
  // The same stretch frozen at its last value shows nothing that a zone at rest does not show.
  const frozen = zoneLog({ recorded: (s, before) => (isPut(s.timeMs) && before ? { ...s, degC: before.degC } : s) });
  expect(ask(stuckReading, evidenceOf([frozen], { zones })).symptoms).toEqual([]);
});

test('does not take a rest between two spikes for a value jumped to', () => {
  const isSpike = (ms: number) => ms === from || ms === from + 5 * HOUR_MS;
  const cold = (s: { timeMs: number }) => s.timeMs > from - 60_000 && s.timeMs < from + 6 * HOUR_MS;
  const log = zoneLog({
    recorded: (s) => (isSpike(s.timeMs) ? { ...s, degC: 60 } : cold(s) ? { ...s, degC: 22 } : s),
    setpointDegC: 22,
  });
  const zones = [zoneOfLog(0, { has: { reading: true, setpoint: false, output: false, running: false } })];
  expect(ask(stuckReading, evidenceOf([log], { zones })).symptoms).toEqual([]);
});

test('does not take a zone that rests between two digits for stuck because its neighbours flicker', () => {
  // Whole degrees, held for five hours; the neighbours go from one degree to the next and back.
  const has = { reading: true, setpoint: false, output: false, running: false };
  const zones = [0, 1, 2].map((index) => zoneOfLog(index, { has, resolutionDegC: 1 }));
  const isRest = (ms: number) => ms > from && ms < from + 5 * HOUR_MS;
  const resting = zoneLog({ resolutionDegC: 1, recorded: (s) => (isRest(s.timeMs) ? { ...s, degC: 180 } : s) });
  const peer = (seed: number, degC: (ms: number) => number) =>
    zoneLog({
      seed,
      resolutionDegC: 1,
      recorded: (s) => (isRest(s.timeMs) ? { ...s, degC: Math.round(180 + degC(s.timeMs - from)) } : s),
    });
  const flicker = (ms: number) => Math.floor(ms / 60_000) % 2;
  const dipOnce = (ms: number) => (ms < 5 * 60_000 ? -30 : flicker(ms));
  const wander = (ms: number) => 10 * Math.sin(ms / HOUR_MS);
  const seenBeside = (degC: (ms: number) => number) =>
    ask(stuckReading, evidenceOf([resting, peer(2, degC), peer(3, degC)], { zones })).symptoms.length;
  expect([seenBeside(flicker), seenBeside(dipOnce), seenBeside(wander)]).toEqual([0, 0, 1]);
});

test('an output at its upper stop is no stale one: the loop asks for all the heat there is', () => {
  const isStuck = (ms: number) => ms > from;
  const stuckWith = (outputPercent: number) =>
    zoneLog({
      recorded: (s, before) =>
        isStuck(s.timeMs) && before ? { ...s, degC: before.degC, outputPercent, setpointDegC: 180 } : s,
    });
  const verdicts = [100, 37.5].map((percent) => {
    const evidence = evidenceOf([stuckWith(percent), ...others]);
    return [ask(stuckReading, evidence).symptoms.length, factsOf(frozenRecord, evidence)['tagFrozenCount'] ?? 0];
  });
  expect(verdicts).toEqual([
    [1, 0],
    [0, 1],
  ]);
});
