import { expect, test } from 'vitest';
import { shiftIntervals } from '../../src/downtime/shifts.js';
import { DAY_MS, HOUR_MS, MONDAY_MS } from '../make/zone-log.js';

const week = { start: MONDAY_MS, end: MONDAY_MS + 7 * DAY_MS };

/** Weekdays, Monday = 1, of one morning shift. */
const daysOf = (days: string) =>
  shiftIntervals({ zones: [], shifts: [{ days, from: '06:00', to: '14:00' }] }, week)!
    .filter(({ start }) => start >= week.start)
    .map(({ start, end }) => {
      expect(end - start).toBe(8 * HOUR_MS);
      return 1 + Math.floor((start - MONDAY_MS) / DAY_MS);
    });

test.each([
  ['mon-fri', [1, 2, 3, 4, 5]],
  ['mon - fri', [1, 2, 3, 4, 5]],
  ['Monday to Friday', [1, 2, 3, 4, 5]],
  ['Mo bis Fr', [1, 2, 3, 4, 5]],
  ['mandag–torsdag, lørdag', [1, 2, 3, 4, 6]],
  ['lør, søn', [6, 7]],
  ['fri-mon', [1, 5, 6, 7]],
  ['daily', [1, 2, 3, 4, 5, 6, 7]],
])('reads the days of "%s"', (text, days) => {
  expect(daysOf(text)).toEqual(days);
});
