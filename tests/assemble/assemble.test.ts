import { describe, expect, test } from 'vitest';
import { faultIntervals } from '../../src/assemble/fault-intervals.js';
import { dutySeries, setpointOf, soakSeries } from '../../src/assemble/series.js';
import { opensByDay } from '../../src/assemble/marks.js';
import { contradictionsOf } from '../../src/alarms/contradictions.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { AlarmSpan } from '../../src/model/alarm.js';
import type { Evidence } from '../../src/model/detector.js';
import type { Open } from '../../src/detect/shared/opens/opens.js';
import { heatedPlant } from '../make/digests.js';

const HOUR_MS = 3_600_000;
const shift = { fromHour: 6, toHour: 22 };

const openAlarm = (startMs: number, minutes: number): AlarmSpan => ({
  startMs,
  endMs: startMs + minutes * 60_000,
  acknowledgedMs: NaN,
  source: 'Zone 1',
  message: 'sensor open',
  kind: 'sensor-open',
  zone: 0,
  machine: 'M1',
  priority: null,
});

describe('what only the alarm log says is no sign in the readings', () => {
  const plant = heatedPlant([{}, {}, {}], { days: 3, shift });
  const alarm = openAlarm(plant.digest.startMs + 10 * HOUR_MS, 30);
  const evidence: Evidence = { ...plant, alarms: AlarmList.of([alarm]), hasAlarmLog: true };
  test('a sound reading under an alarm gives no fault span', () => {
    expect(faultIntervals(evidence)).toEqual([[], [], []]);
  });
  test('so the alarm stands as one without a sign', () => {
    expect(contradictionsOf(evidence.alarms, evidence.zones, faultIntervals(evidence)).map(({ what }) => what)).toEqual(
      ['alarm-without-sign'],
    );
  });
});

test('opens are counted by the days of the plant’s clock: 23:30 UTC is the next day in Oslo', () => {
  const open = (time: string, runningShare: number): Open => ({
    startMs: Date.parse(time),
    endMs: Date.parse(time) + 2000,
    isStanding: false,
    kind: 'open',
    isInLog: true,
    isInAlarms: false,
    alarmCount: 0,
    sampleCount: 1,
    beforeDegC: 150,
    afterDegC: 150,
    runningShare,
    hot: 1,
    othersAtOnceCount: 0,
  });
  const opens = [open('2026-09-07T21:30:00Z', 1), open('2026-09-07T23:30:00Z', 0), open('2026-09-08T08:00:00Z', NaN)];
  expect(opensByDay(opens, 'Europe/Oslo')).toEqual([
    { day: '2026-09-07', running: 1, stopped: 0 },
    { day: '2026-09-08', running: 1, stopped: 1 },
  ]);
  expect(opensByDay(opens, 'utc')[0]).toEqual({ day: '2026-09-07', running: 1, stopped: 1 });
});

describe('the series of the charts', () => {
  // Zone 1 reads 4 °C too high from Wednesday on, so its loop holds it 4 °C too cold and gives less heat.
  const evidence = heatedPlant([{ offsetDegC: (hours) => (hours > 52 ? 4 : 0) }, {}, {}, {}], { days: 5, shift });
  test('a soak each night; the offset shows in the last one', () => {
    const { points, roomDegC } = soakSeries(evidence, 0);
    expect(points.length).toBeGreaterThanOrEqual(3);
    expect(points.at(-1)!.offsetDegC).toBeGreaterThan(3);
    expect(points.at(-1)!.offsetDegC).toBeLessThan(5);
    expect(roomDegC).toBeGreaterThan(14);
    expect(roomDegC).toBeLessThan(26); // the made room swings from 16 to 24 °C
  });
  test('the duty turns to the side of a zone that reads high', () => {
    const duty = dutySeries(evidence, 0);
    expect(duty.length).toBeGreaterThan(0);
    expect(duty.length).toBeLessThanOrEqual(400);
    expect(duty.at(-1)!.residualDegC).toBeGreaterThan(1);
  });
  test('the set point is the one it is held at; without one, the reading held', () => {
    expect(setpointOf(evidence, 0)).toBe(150);
    const bare = heatedPlant([{}, {}], { days: 3, shift, hasSetpoint: false });
    expect(Math.abs(setpointOf(bare, 0)! - 150)).toBeLessThan(3);
  });
});
