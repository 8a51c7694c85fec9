import { expect, test } from 'vitest';
import { levelChangesOf } from '../../src/history/level-changes.js';
import { Random } from '../make/random.js';

const weekOf = (i: number) => `2026-W${String(i + 1).padStart(2, '0')}`;

/** Weeks with these alarms; the minutes are the same in all. */
function weeksWith(alarms: readonly number[], coveredDays = 7) {
  return alarms.map((count, i) => ({
    week: weekOf(i),
    coveredDays,
    alarms: count,
    zoneFaultMinutes: 30,
    otherMinutes: 0,
    zonesFaulty: 0,
  }));
}

/** Counts around a level, as alarms come: some weeks a half, some twice as many. */
function around(level: number, count: number, random: Random): number[] {
  return Array.from({ length: count }, () => Math.round(level * Math.exp(0.35 * random.gauss())));
}

test('three times the alarms for eight weeks is a new level, dated to its first weeks', () => {
  const random = new Random(4);
  const [change, ...others] = levelChangesOf(weeksWith([...around(20, 20, random), ...around(60, 8, random)]));
  expect(others).toEqual([]);
  expect(change).toMatchObject({ measure: 'alarms', isHigher: true });
  expect(['2026-W20', '2026-W21', '2026-W22']).toContain(change!.sinceWeek);
  expect(change!.perWeekBefore).toBeGreaterThan(15);
  expect(change!.perWeekBefore).toBeLessThan(25);
  expect(change!.perWeekSince).toBeGreaterThan(45);
  // Montgomery & Runger, Table 16-9: k ½, h 4, no shift: 168.
  expect(Math.abs(change!.byChanceInWeeks - 168)).toBeLessThan(0.5);
});

test('a repair that takes most alarms away is told as lower', () => {
  const random = new Random(5);
  const changes = levelChangesOf(weeksWith([...around(60, 20, random), ...around(12, 10, random)]));
  expect(changes).toMatchObject([{ measure: 'alarms', isHigher: false }]);
});

test('one huge week is no new level, nor are weeks of which little was logged', () => {
  const random = new Random(6);
  expect(levelChangesOf(weeksWith([...around(20, 20, random), 900, ...around(20, 3, random)]))).toEqual([]);
  const half = weeksWith([...around(20, 20, random), 0, 0, 0, 0, 0, 0, 0, 0], 2);
  expect(levelChangesOf(half)).toEqual([]);
});

test('a half week counts by its days', () => {
  const random = new Random(7);
  const weeks = weeksWith(around(40, 30, random)).map((week, i) =>
    i < 15 ? week : { ...week, alarms: (week.alarms * 4) / 7, zoneFaultMinutes: (30 * 4) / 7, coveredDays: 4 },
  );
  expect(levelChangesOf(weeks)).toEqual([]);
});

test('a steady plant is left alone in most years', () => {
  const random = new Random(8);
  const told = Array.from({ length: 300 }, () => levelChangesOf(weeksWith(around(20, 52, random)))).filter(
    ({ length }) => length > 0,
  );
  expect(told.length / 300).toBeLessThan(0.06);
});

test('no weeks, nothing to tell', () => {
  expect(levelChangesOf([])).toEqual([]);
});
