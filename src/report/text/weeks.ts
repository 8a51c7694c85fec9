import { DAY_MS } from '../../model/time-units.js';

/** Monday of an ISO 8601 week, as UTC ms; NaN when the text is no such week. Week 1 has the year's first Thursday. */
export function weekStartMs(week: string): number {
  const found = /^(\d{4})-W(\d{2})$/.exec(week);
  if (!found) return NaN;
  const fourth = Date.UTC(Number(found[1]), 0, 4);
  const fromMonday = (new Date(fourth).getUTCDay() + 6) % 7;
  return fourth - fromMonday * DAY_MS + (Number(found[2]) - 1) * 7 * DAY_MS;
}

/** "2026-W37" → "Week 37, from 7 Sep"; any other text as it is. */
export function weekText(week: string): string {
  const startMs = weekStartMs(week);
  if (Number.isNaN(startMs)) return week;
  const day = new Date(startMs).getUTCDate();
  const month = new Date(startMs).toLocaleDateString('en-US', { month: 'short', timeZone: 'UTC' });
  return `Week ${Number(week.slice(6))}, from ${day}\u00A0${month}`;
}
