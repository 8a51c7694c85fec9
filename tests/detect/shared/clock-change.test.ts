import { expect, test } from 'vitest';
import { correctAlarmsAcrossChange } from '../../../src/detect/shared/opens/clock-change.js';
import { clockChanges } from '../../../src/normalise/clock.js';
import { DAY_MS, evidenceOf, MONDAY_MS, opened, sensorAlarm, zoneLog } from '../../make/zone-log.js';
import { Random } from '../../make/random.js';

const random = new Random(5);
const starts = Array.from({ length: 40 }, () => MONDAY_MS + Math.floor(random.uniform(0.1, 3.8) * DAY_MS)).sort(
  (a, b) => a - b,
);
const log = zoneLog({ recorded: (s) => (starts.some((t) => s.timeMs >= t && s.timeMs < t + 45_000) ? opened(s) : s) });
const changeMs = MONDAY_MS + 2 * DAY_MS;
const hourMs = 3_600_000;

/** Alarms of all opens, as a clock shows them that is off by so much before and after the change. */
const alarmsOf = (beforeMs: number, afterMs: number) =>
  starts
    .map((t) => ({ t, offMs: t < changeMs ? beforeMs : afterMs }))
    .map(({ t, offMs }) => sensorAlarm(0, t - offMs + 2000, t - offMs + 40_000));

test.each([
  ['winter time kept into summer', 0, hourMs],
  ['summer time kept into winter, four minutes slow', hourMs + 240_000, 240_000],
])('%s: each side of the change gets its own shift', (_, beforeMs, afterMs) => {
  const shift = correctAlarmsAcrossChange(evidenceOf([log], { alarms: alarmsOf(beforeMs, afterMs) }), [changeMs]);
  expect(shift.bySide).toHaveLength(2);
  const placed = [...shift.alarms].map(({ startMs }) => startMs);
  const near = starts.filter((t) => Math.abs(t - changeMs) > 2 * hourMs);
  for (const t of near) expect(placed.some((ms) => Math.abs(ms - t) <= 45_000)).toBe(true);
  expect(shift.alarms.length).toBe(starts.length);
});

test.each([
  ['an hour off on both sides', hourMs, hourMs],
  ['right on both sides', 0, 0],
  ['ten minutes apart, which no change is', 0, 600_000],
])('%s: nothing is parted', (_, beforeMs, afterMs) => {
  const shift = correctAlarmsAcrossChange(evidenceOf([log], { alarms: alarmsOf(beforeMs, afterMs) }), [changeMs]);
  expect(shift.bySide).toEqual([]);
});

test('too few events on one side part nothing', () => {
  const few = alarmsOf(0, hourMs).filter(({ startMs }, i) => startMs < changeMs || i % 12 === 0);
  expect(correctAlarmsAcrossChange(evidenceOf([log], { alarms: few }), [changeMs]).bySide).toEqual([]);
});

test('the changes of a time zone inside a span', async () => {
  // 29 March and 25 October 2026, 01:00 UTC (Directive 2000/84/EC).
  const [spring, autumn] = [Date.UTC(2026, 2, 29, 1), Date.UTC(2026, 9, 25, 1)];
  const span = [Date.UTC(2026, 0, 5, 7, 13), Date.UTC(2026, 11, 1)] as const;
  expect(await clockChanges('Europe/Oslo', ...span)).toEqual([spring, autumn]);
  expect(await clockChanges('Europe/Oslo', spring + 60_000, autumn - 60_000)).toEqual([]);
  expect(await clockChanges('Etc/GMT-1', ...span)).toEqual([]);
  expect(await clockChanges(null, ...span)).toEqual([]);
});
