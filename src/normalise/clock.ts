/** Offset from UTC in minutes of a time zone at a moment in UTC ms; NaN outside what the zone data knows. */
export type OffsetMinutes = (utcMs: number) => number;

const hourMs = 3_600_000;
const minuteMs = 60_000;
/** The clock is put back by an hour, and the repeated hour lasts as long. */
const longestRepeatMs = 2 * hourMs;

/**
 * Makes the offset function of an IANA time zone from the platform's zone data (through luxon, loaded only now).
 *
 * @throws RangeError for a name that is no time zone.
 */
export async function zoneOffset(name: string): Promise<OffsetMinutes> {
  const { IANAZone } = await import('luxon');
  const zone = IANAZone.create(name);
  if (!zone.isValid) throw new RangeError(`"${name}" is not a time zone.`);
  return (utcMs) => zone.offset(utcMs);
}

/**
 * Turns the clock of a log, row after row, into UTC. At the end of summer time one hour stands twice on the clock: its
 * first turn is taken until the clock goes back. In the hour that is left out in spring nothing should stand; rows that
 * do stand there are read as if the clock had not been put forward, and counted.
 */
export class LogClock {
  /** Rows that stand in an hour which the clock leaves out. */
  missingHourRows = 0;
  /** Rows that stand in an hour which the clock shows twice. */
  repeatedHourRows = 0;
  private hourStart = NaN;
  private firstOffset = 0;
  private secondOffset = 0;
  private isMissing = false;
  private lastUtcMs = NaN;

  constructor(private readonly offsetMinutes: OffsetMinutes) {}

  /** @param clockMs What the clock shows, counted as if it were UTC; call in file order. */
  toUtc(clockMs: number): number {
    const start = Math.floor(clockMs / (15 * minuteMs));
    if (start !== this.hourStart) this.enter(start, clockMs);
    let utcMs = clockMs - this.firstOffset * minuteMs;
    if (this.isMissing) this.missingHourRows++;
    if (this.firstOffset !== this.secondOffset) {
      this.repeatedHourRows++;
      // A step back by days is the next tag of a file that lists one after the other.
      const isBack = utcMs < this.lastUtcMs && utcMs > this.lastUtcMs - longestRepeatMs;
      if (isBack) utcMs = clockMs - this.secondOffset * minuteMs;
    }
    this.lastUtcMs = utcMs;
    return utcMs;
  }

  /** Offsets change on quarter hours only, so they are looked up once per quarter. */
  private enter(start: number, clockMs: number): void {
    this.hourStart = start;
    const before = this.offsetMinutes(clockMs - 26 * hourMs);
    const after = this.offsetMinutes(clockMs + 26 * hourMs);
    const fits = [before, after].filter((offset) => this.offsetMinutes(clockMs - offset * minuteMs) === offset);
    this.isMissing = fits.length === 0;
    this.firstOffset = fits[0] ?? before;
    this.secondOffset = fits[1] ?? this.firstOffset;
  }
}

/**
 * Function from a log's clock to UTC for a time zone; null means that the clock is UTC.
 *
 * @throws RangeError for a name that is no time zone.
 */
export async function clockToUtc(timezone: string | null): Promise<(clockMs: number) => number> {
  if (timezone === null) return (clockMs) => clockMs;
  const clock = new LogClock(await zoneOffset(timezone));
  return (clockMs) => clock.toUtc(clockMs);
}
