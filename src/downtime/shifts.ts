import { DateTime } from 'luxon';
import type { PlantFile } from '../model/plant-file.js';
import { mergeIntervals, type Interval } from '../maths/intervals.js';

/** Names of weekdays in plant.yaml, from Monday = 1 (ISO 8601); English, German and Norwegian short forms. */
const weekdays: Readonly<Record<string, number>> = {
  mon: 1,
  mo: 1,
  man: 1,
  tue: 2,
  di: 2,
  tir: 2,
  wed: 3,
  mi: 3,
  ons: 3,
  thu: 4,
  do: 4,
  tor: 4,
  fri: 5,
  fr: 5,
  fre: 5,
  sat: 6,
  sa: 6,
  lor: 6,
  sun: 7,
  so: 7,
  son: 7,
};

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
      if (!weekdaysOf(days).has(day.weekday)) continue;
      const start = atClock(day, from);
      const end = atClock(day, to);
      intervals.push({ start: start.toMillis(), end: (end > start ? end : end.plus({ days: 1 })).toMillis() });
    }
  }
  return mergeIntervals(intervals);
}

/** "mon-fri", "mon to fri", "sat, sun", "daily" as weekday numbers. */
function weekdaysOf(text: string): Set<number> {
  const numbers = new Set<number>();
  const plain = text.toLowerCase().replaceAll('ø', 'o');
  const ranges = plain.replace(/\s*[-–—]\s*|\s+(?:to|bis|til)\s+/gu, '-');
  for (const part of ranges.split(/[\s,;]+/u)) {
    const [from, to = from] = part.split('-').map((name) => weekdays[name.slice(0, 3)] ?? weekdays[name.slice(0, 2)]);
    if (from === undefined || to === undefined) continue;
    for (let day = from; ; day = (day % 7) + 1) {
      numbers.add(day);
      if (day === to) break;
    }
  }
  return numbers.size > 0 ? numbers : new Set([1, 2, 3, 4, 5, 6, 7]);
}

function atClock(day: DateTime, clock: string): DateTime {
  const [hour = 0, minute = 0] = clock.split(/[:.]/u).map(Number);
  return day.set({ hour: hour % 24, minute }).plus({ days: hour === 24 ? 1 : 0 });
}
