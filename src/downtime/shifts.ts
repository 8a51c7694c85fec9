import { DateTime } from 'luxon';
import type { PlantFile } from '../model/plant-file.js';
import { mergeIntervals, type Interval } from '../maths/intervals.js';

/**
 * The shifts of plant.yaml inside a window, in UTC ms.
 *
 * @returns null when plant.yaml gives none. A shift that ends before it begins goes over midnight. Never throws.
 */
export function shiftIntervals({ shifts, timezone }: PlantFile, window: Interval): Interval[] | null {
  if (!shifts || shifts.length === 0) return null;
  const zone = timezone ?? 'utc';
  const intervals: Interval[] = [];
  let day = DateTime.fromMillis(window.start, { zone }).startOf('day').minus({ days: 1 });
  for (; day.toMillis() < window.end; day = day.plus({ days: 1 })) {
    for (const { days, from, to } of shifts) {
      if (!days.includes(day.weekday)) continue;
      const start = atClock(day, from);
      const end = atClock(day, to);
      intervals.push({ start: start.toMillis(), end: (end > start ? end : end.plus({ days: 1 })).toMillis() });
    }
  }
  return mergeIntervals(intervals);
}

function atClock(day: DateTime, clock: string): DateTime {
  const [hour = 0, minute = 0] = clock.split(/[:.]/u).map(Number);
  return day.set({ hour: hour % 24, minute }).plus({ days: hour === 24 ? 1 : 0 });
}
