import { expect, test } from 'vitest';
import { sensorOpens } from '../../../src/detect/judges/sensor-opens.js';
import { readingState } from '../../../src/model/sample-block.js';
import { factsOf } from '../../make/ask.js';
import {
  DAY_MS,
  evidenceOf,
  HOUR_MS,
  MONDAY_MS,
  opened,
  sensorAlarm,
  zoneLog,
  zoneOfLog,
} from '../../make/zone-log.js';

const at = (day: number, hour: number) => MONDAY_MS + day * DAY_MS + hour * HOUR_MS;

test('counts opens from log and alarms together, each once', () => {
  const starts = [at(1, 9), at(1, 11), at(2, 15)];
  const log = zoneLog({
    recorded: (s) => (starts.some((t) => s.timeMs >= t && s.timeMs < t + 60_000) ? opened(s) : s),
  });
  const alarms = [
    ...starts.slice(0, 2).map((t) => sensorAlarm(0, t + 2000, t + 50_000)),
    sensorAlarm(0, at(3, 8) + 3000, at(3, 8) + 4000),
  ];
  const facts = factsOf(sensorOpens, evidenceOf([log], { alarms }));
  expect(facts).toMatchObject({ openCount: 4, inLogCount: 3, alarmOnlyCount: 1, shortCount: 0, briefShare: 1 });
  expect(facts['alarmedShare']).toBeCloseTo(3 / 4, 9);
});

test('tells how the long open came: short ones before it', () => {
  const isOpen = (ms: number) => ms >= at(2, 12) || [at(1, 9), at(1, 15), at(2, 8)].includes(ms);
  const facts = factsOf(sensorOpens, evidenceOf([zoneLog({ recorded: (s) => (isOpen(s.timeMs) ? opened(s) : s) })]));
  expect(facts).toMatchObject({ openCount: 4, opensBeforeLongCount: 3, warningHours: 27, longCount: 1 });
  expect(facts['standingMinutes']).toBe(36 * 60);
  // The machine runs from 7 to 22 o'clock with short stops: 13 hours on Tuesday, 5 on Wednesday.
  expect(facts['warningRunningHours']!).toBeGreaterThan(14);
  expect(facts['warningRunningHours']!).toBeLessThan(18);
  expect(facts['warningHotHours']!).toBeLessThan(19.5);
  expect(facts['warningColdCount']).toBe(0);
});

test('leaves what three zones share to card-events', () => {
  const logs = [1, 2, 3].map((seed) => zoneLog({ seed, recorded: (s) => (s.timeMs === at(1, 9) ? opened(s) : s) }));
  expect(factsOf(sensorOpens, evidenceOf(logs))).toMatchObject({ openCount: 0, sharedCount: 1 });
});

test.each([
  [-100, 0, 1],
  [150, 1, 0],
  [870, 1, 0],
])('a bad quality beside %s °C counts %i opens and %i shorts', (degC, openCount, shortCount) => {
  const bad = { degC, state: readingState.badQuality };
  const log = zoneLog({ recorded: (s) => (s.timeMs >= at(2, 12) ? { ...s, ...bad } : s) });
  expect(factsOf(sensorOpens, evidenceOf([log]))).toMatchObject({ openCount, shortCount });
});

test('below scale is a short on an RTD and an open on a thermocouple', () => {
  const log = zoneLog({
    recorded: (s) => (s.timeMs >= at(2, 12) ? { ...s, degC: -200, state: readingState.belowScale } : s),
  });
  const countsOf = (sensor: string) => {
    const { openCount, shortCount } = factsOf(sensorOpens, evidenceOf([log], { zones: [zoneOfLog(0, { sensor })] }));
    return [openCount, shortCount];
  };
  expect([countsOf('pt100'), countsOf('tc-j')]).toEqual([
    [0, 1],
    [1, 0],
  ]);
});

test('tells a zone that had cooled when its reading came back from one whose record alone was lost', () => {
  // 20 minutes of time constant and room 22 °C: an hour without heat takes 95 % of the way down.
  const isLost = (ms: number) => ms >= at(2, 12) && ms < at(2, 13);
  const cooled = zoneLog({
    offsetDegC: (ms) => (isLost(ms) ? 900 : 0),
    recorded: (s) => (isLost(s.timeMs) ? opened(s) : s),
  });
  const kept = zoneLog({ recorded: (s) => (isLost(s.timeMs) ? opened(s) : s) });
  expect(factsOf(sensorOpens, evidenceOf([cooled]))['cooledRatio']!).toBeGreaterThan(0.8);
  expect(factsOf(sensorOpens, evidenceOf([kept]))['cooledRatio']!).toBeLessThan(0.1);
});

const opensAt = (ms: number) => zoneLog({ recorded: (s) => (s.timeMs === ms ? opened(s) : s) });
const jumpsFor = (fromMs: number, toMs: number) =>
  zoneLog({ seed: 2, recorded: (s) => (s.timeMs >= fromMs && s.timeMs < toMs ? { ...s, degC: s.degC - 90 } : s) });

test('an open in the moment in which most of a log is upset is the station’s, elsewhere the zone’s', () => {
  const counts = (openMs: number, zones: number) => {
    const calm = Array.from({ length: zones - 2 }, (_, i) => zoneLog({ seed: 3 + i }));
    const evidence = evidenceOf([opensAt(openMs), jumpsFor(at(1, 9), at(1, 10)), ...calm]);
    const { openCount, sharedCount } = factsOf(sensorOpens, evidence);
    return [openCount, sharedCount];
  };
  expect(counts(at(1, 9), 2)).toEqual([0, 1]);
  expect(counts(at(1, 12), 2)).toEqual([1, 0]);
  expect(counts(at(1, 9), 4)).toEqual([1, 0]);
});

test('a zone that jumps all day proves nothing about the open of another', () => {
  const noisy = zoneLog({ seed: 2, recorded: (s) => (s.timeMs % 600_000 === 0 ? { ...s, degC: s.degC - 90 } : s) });
  expect(factsOf(sensorOpens, evidenceOf([opensAt(at(1, 9)), noisy]))).toMatchObject({ openCount: 1, sharedCount: 0 });
});

test('leaves to card-events what one other zone shares most of the time, but not one meeting', () => {
  const times = [at(1, 9), at(1, 15), at(2, 11)];
  const both = (seed: number) => zoneLog({ seed, recorded: (s) => (times.includes(s.timeMs) ? opened(s) : s) });
  const calm = [3, 4, 5].map((seed) => zoneLog({ seed }));
  expect(factsOf(sensorOpens, evidenceOf([both(1), both(2), ...calm]))).toMatchObject({ openCount: 0, sharedCount: 3 });
  expect(factsOf(sensorOpens, evidenceOf([both(1), opensAt(at(1, 9)), ...calm]))).toMatchObject({ openCount: 3 });
});
