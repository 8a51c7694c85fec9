import { expect, test } from 'vitest';
import { correctAlarmClock, correctAlarmClocks } from '../../../src/detect/shared/opens/clock-shift.js';
import { DAY_MS, evidenceOf, MONDAY_MS, opened, sensorAlarm, zoneLog } from '../../make/zone-log.js';
import { makeZone } from '../../make/blocks.js';
import { Random } from '../../make/random.js';

const random = new Random(3);
const starts = Array.from({ length: 25 }, () => MONDAY_MS + DAY_MS + Math.floor(random.uniform(0, 2.5 * DAY_MS)));
const log = zoneLog({ recorded: (s) => (starts.some((t) => s.timeMs >= t && s.timeMs < t + 45_000) ? opened(s) : s) });

test.each([0, 17, -95, 600, 3600, -3600])('finds an alarm clock that is off by %i s', (offS) => {
  const alarms = starts
    .map((t) => sensorAlarm(0, t - offS * 1000 + 2000, t - offS * 1000 + 40_000))
    .sort((a, b) => a.startMs - b.startMs);
  const shift = correctAlarmClock(evidenceOf([log], { alarms }));
  expect(shift.isSure).toBe(true);
  // Logged every 30 s, and small shifts are matched within that time anyway.
  expect(Math.abs(shift.shiftMs / 1000 - offS)).toBeLessThanOrEqual(offS === 17 ? 20 : 15);
  expect(shift.alarms.at(0).startMs).toBe(alarms[0]!.startMs + shift.shiftMs);
});

test('does not invent a shift from alarms that match nothing, or from too few', () => {
  const stray = Array.from({ length: 20 }, () => MONDAY_MS + Math.floor(random.uniform(0, 4 * DAY_MS))).sort(
    (a, b) => a - b,
  );
  for (const times of [stray, starts.slice(0, 2).map((t) => t - 600_000)]) {
    const shift = correctAlarmClock(evidenceOf([log], { alarms: times.map((t) => sensorAlarm(0, t, t + 5000)) }));
    expect([shift.isSure, shift.shiftMs]).toEqual([false, 0]);
  }
});

test('alarms of the weeks before the log do not hide a shift', () => {
  const own = starts.slice(0, 8).map((t) => sensorAlarm(0, t + 240_000, t + 280_000));
  const before = starts.map((t) => sensorAlarm(0, t - 14 * DAY_MS, t - 14 * DAY_MS + 40_000));
  const alarms = [...before, ...own].sort((a, b) => a.startMs - b.startMs);
  const shift = correctAlarmClock(evidenceOf([log], { alarms }));
  expect([shift.isSure, shift.eventCount]).toEqual([true, own.length]);
  expect(Math.abs(shift.shiftMs + 240_000)).toBeLessThanOrEqual(20_000);
});

test('finds the one machine whose alarm clock is off, and leaves the other as it is', () => {
  const zones = [0, 1].map((index) => makeZone({ index, machine: `M${index + 1}`, samplingMs: 30_000 }));
  const late = starts.slice(0, 8).map((t) => sensorAlarm(1, t + 240_000, t + 280_000));
  const right = starts.map((t) => sensorAlarm(0, t + 2000, t + 40_000));
  const alarms = [...right, ...late].sort((a, b) => a.startMs - b.startMs);
  const shift = correctAlarmClocks(evidenceOf([log, log], { zones, alarms }));
  expect(shift.shiftMs).toBe(0);
  expect(shift.byMachine.map(({ machine }) => machine)).toEqual(['M2']);
  expect(Math.abs(shift.byMachine[0]!.shiftMs + 240_000)).toBeLessThanOrEqual(20_000);
  const moved = [...shift.alarms].filter(({ zone }) => zone === 1).map(({ startMs }) => startMs);
  expect(moved[0]).toBe(Math.min(...late.map(({ startMs }) => startMs)) + shift.byMachine[0]!.shiftMs);
  expect(
    [...shift.alarms]
      .filter(({ zone }) => zone === 0)
      .map(({ startMs }) => startMs)
      .sort(),
  ).toEqual(right.map(({ startMs }) => startMs).sort());
});
