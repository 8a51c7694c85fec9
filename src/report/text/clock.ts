/**
 * The plant's clock. Times are stored in UTC; people at the machine think in the clock on its wall.
 * Formatters of `Intl` are slow to make, so one is kept per clock.
 */
export interface Clock {
  readonly timezone: string;
  /** "Tue 3 Feb 14:05". */
  dateTime(time: string | number): string;
  /** "3 Feb". */
  date(time: string | number): string;
  /** "3 Feb 2026". */
  dateWithYear(time: string | number): string;
  /** "7 Sep 2026 to 20 Sep 2026": an end at midnight belongs to the day before. */
  days(start: string, end: string): string;
  /** "14:05:33". */
  time(time: string | number): string;
  /** The wall clock's reading as if it were UTC, for chart axes. */
  wallMs(timeMs: number): number;
}

/** @returns A clock in that zone; in UTC where the name is absent or not known to this computer. Never throws. */
export function clockOf(timezone: string | undefined): Clock {
  const zone = knownZone(timezone);
  const dates = partsOf(zone, { weekday: 'short', day: 'numeric', month: 'short', year: 'numeric' });
  const times = partsOf(zone, { hour: '2-digit', minute: '2-digit', second: '2-digit', hourCycle: 'h23' });
  const clockText = (time: string | number, withSeconds: boolean): string => {
    const { hour, minute, second } = times(time);
    return `${hour}:${minute}${withSeconds ? `:${second}` : ''}`;
  };
  const date = (time: string | number): string => {
    const { day, month } = dates(time);
    return `${day}\u00A0${month}`;
  };
  const dateWithYear = (time: string | number): string => `${date(time)}\u00A0${dates(time).year}`;
  return {
    timezone: zone,
    date,
    dateWithYear,
    days: (start, end) => `${dateWithYear(start)} to ${dateWithYear(Math.max(Date.parse(start), Date.parse(end) - 1))}`,
    dateTime: (time) => `${dates(time).weekday}\u00A0${date(time)} ${clockText(time, false)}`,
    time: (time) => clockText(time, true),
    wallMs: wallClock(zone),
  };
}

type Parts = Readonly<Record<string, string>>;

function partsOf(timeZone: string, options: Intl.DateTimeFormatOptions): (time: string | number) => Parts {
  const formatter = new Intl.DateTimeFormat('en-GB', { ...options, timeZone });
  return (time) => {
    const at = new Date(time);
    if (Number.isNaN(at.getTime()))
      return { day: '–', month: '', year: '', weekday: '', hour: '–', minute: '–', second: '–' };
    // Some versions of the locale write "Sept"; the charts write three letters.
    return Object.fromEntries(
      formatter.formatToParts(at).map(({ type, value }) => [type, value.replace(/^Sept$/, 'Sep')]),
    );
  };
}

function knownZone(timezone: string | undefined): string {
  try {
    return new Intl.DateTimeFormat('en-GB', { timeZone: timezone ?? 'UTC' }).resolvedOptions().timeZone;
  } catch {
    return 'UTC';
  }
}

/** Offsets change on the quarter hour at the finest, so one look per quarter hour is enough. */
const quarterMs = 900_000;

function wallClock(timeZone: string): (timeMs: number) => number {
  if (timeZone === 'UTC') return (timeMs) => timeMs;
  const parts = partsOf(timeZone, {
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    hourCycle: 'h23',
  });
  const offsets = new Map<number, number>();
  return (timeMs) => {
    const quarter = Math.floor(timeMs / quarterMs);
    let offsetMs = offsets.get(quarter);
    if (offsetMs === undefined) {
      const { year, month, day, hour, minute } = parts(quarter * quarterMs);
      offsetMs =
        Date.UTC(Number(year), Number(month) - 1, Number(day), Number(hour), Number(minute)) - quarter * quarterMs;
      offsets.set(quarter, offsetMs);
    }
    return timeMs + offsetMs;
  };
}
