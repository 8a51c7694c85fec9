import { DateTime } from 'luxon';

/** A day or week of a clock, in UTC ms: from its first moment to before the first of the next. */
export interface CalendarSpan {
  readonly fromMs: number;
  readonly toMs: number;
  /** As in 2026-01-31, a week as in 2026-W05 (ISO 8601). */
  readonly name: string;
}

const nameFormats = { day: 'yyyy-MM-dd', week: "kkkk-'W'WW" } as const;

/**
 * The days or weeks of a clock. They begin at its midnight and are an hour longer or shorter where the clock changes.
 * Asking a calendar costs more than most of what is done with the answer, so a span is looked up once as long as the
 * times asked for lie in it.
 *
 * @param timezone IANA name.
 * @returns A function of a time in UTC ms; it never throws.
 */
export function calendarOf(timezone: string, unit: keyof typeof nameFormats): (timeMs: number) => CalendarSpan {
  let last: CalendarSpan = { fromMs: Infinity, toMs: -Infinity, name: '' };
  return (timeMs) => {
    if (timeMs >= last.fromMs && timeMs < last.toMs) return last;
    const start = DateTime.fromMillis(timeMs, { zone: timezone }).startOf(unit);
    const toMs = start.plus({ [unit]: 1 }).toMillis();
    last = { fromMs: start.toMillis(), toMs, name: start.toFormat(nameFormats[unit]) };
    return last;
  };
}
