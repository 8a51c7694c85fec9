import { expect, test } from 'vitest';
import { opensByRunning } from '../../../src/detect/judges/opens-by-running.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, opened, stopAlarm, zoneLog } from '../../make/zone-log.js';

const every = (minutes: number, s: MadeSample) => (s.timeMs / 60_000) % minutes === 0;
const whileRunning = (s: MadeSample) => (every(47, s) && s.running === 1 ? opened(s) : s);
const always = (s: MadeSample) => (every(47, s) ? opened(s) : s);

test('tells opens that come while the machine runs, against the hot hours it stands', () => {
  const facts = factsOf(opensByRunning, evidenceOf([zoneLog({ days: 6, recorded: whileRunning })]));
  expect(facts['stoppedCount']).toBe(0);
  expect(facts['rateRatio']).toBe(999);
  expect(facts['runningHigherPValue']!).toBeLessThan(0.01);
});

test('does not take opens at any time for opens while running, though the machine runs most of the time', () => {
  const facts = factsOf(opensByRunning, evidenceOf([zoneLog({ days: 6, recorded: always })]));
  expect(facts['runningCount']!).toBeGreaterThan(facts['stoppedCount']! / 2);
  expect(facts['runningHigherPValue']!).toBeGreaterThan(0.05);
});

test('counts only the time in which the fault was there, nights too where opens come cold', () => {
  const fromMs = MONDAY_MS + 3.9 * DAY_MS; // Thursday, 21:36: heat goes off at 22:00
  const longMs = MONDAY_MS + 4.2 * DAY_MS; // Friday, 04:48
  const dying = (s: MadeSample) =>
    s.timeMs >= longMs && s.timeMs < longMs + HOUR_MS ? opened(s) : s.timeMs >= fromMs ? always(s) : s;
  const facts = factsOf(opensByRunning, evidenceOf([zoneLog({ days: 6, recorded: dying })]));
  expect(facts['stoppedBurstCount']!).toBeGreaterThan(4);
  expect(facts['isHotOnlyCount']).toBe(0);
  expect(facts['spanHours']!).toBeLessThan((longMs - fromMs) / HOUR_MS + 0.1);
  expect(facts['runningHours']!).toBeLessThan(0.5);
  expect(facts['stoppedHours']!).toBeGreaterThan(5.5);
});

test('says nothing of a single open: there is nothing to compare', () => {
  const once = (s: MadeSample) => (s.timeMs === MONDAY_MS + 2 * DAY_MS ? opened(s) : s);
  expect(ask(opensByRunning, evidenceOf([zoneLog({ recorded: once })])).symptoms).toEqual([]);
});

test('cannot tell without a running state, unless stop alarms tell it', () => {
  const log = zoneLog({ days: 6, recorded: whileRunning }).map(({ running, ...s }) => ({ wasRunning: running, ...s }));
  expect(ask(opensByRunning, evidenceOf([log])).unable).toMatch(/does not tell when the machine runs/);
  const stops = log.flatMap((s, i) => {
    if (s.wasRunning === 1 || log[i - 1]?.wasRunning !== 1) return [];
    const end = log.slice(i).find((later) => later.wasRunning === 1) ?? log.at(-1)!;
    return [stopAlarm(s.timeMs, end.timeMs)];
  });
  const facts = factsOf(opensByRunning, evidenceOf([log], { alarms: stops }));
  expect(facts['runningHigherPValue']!).toBeLessThan(0.02);
});
