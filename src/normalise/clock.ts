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

/** So many rows in an hour that does not exist are no slip (own choice). */
const fewestMissingRows = 2;
const quarterMs = 15 * minuteMs;

/** What is known of a logger: files of the same zones share it, so that what one shows holds for those that follow. */
export class LoggerHabit {
  /** The offset that it keeps all year, in minutes, once it is seen to pass over the beginning of summer time. */
  fixedOffset = NaN;
}

/**
 * Turns the clock of a log, row after row, into UTC. At the end of summer time one hour stands twice on the clock: its
 * first turn is taken until the clock goes back. In the hour that is left out in spring nothing should stand; a logger
 * that writes there does not follow summer time, and from then on its clock is read so.
 */
export class LogClock {
  /** Rows that stand in an hour which the clock leaves out. */
  missingHourRows = 0;
  /** Clock time of the first row in an hour which the clock shows twice; NaN = none. */
  firstTwiceShownMs = NaN;
  /** Clock times of the hours that the clock shows twice, but the log has once and without a break. */
  readonly unrepeatedHoursMs: number[] = [];
  private quarter = NaN;
  private firstOffset = 0;
  private secondOffset = 0;
  private isMissing = false;
  private lastUtcMs = NaN;
  /** Quarters of the hour now repeated that hold rows; NaN where the clock has gone back. */
  private repeatedQuarters = 0;

  constructor(
    private readonly offsetMinutes: OffsetMinutes,
    private readonly habit = new LoggerHabit(),
  ) {}

  /** Minutes from UTC that the logger keeps in summer, too; NaN for one that follows the time zone. */
  get fixedOffset(): number {
    return this.habit.fixedOffset;
  }

  /** @param clockMs What the clock shows, counted as if it were UTC; call in file order. */
  toUtc(clockMs: number): number {
    const quarter = Math.floor(clockMs / quarterMs);
    if (quarter !== this.quarter) this.enter(quarter, clockMs);
    let utcMs = clockMs - this.firstOffset * minuteMs;
    if (this.isMissing) this.missingHourRows++;
    if (this.firstOffset !== this.secondOffset) {
      if (Number.isNaN(this.firstTwiceShownMs)) this.firstTwiceShownMs = clockMs;
      // A step back by days is the next tag of a file that lists one after the other.
      const isBack = utcMs < this.lastUtcMs && utcMs > this.lastUtcMs - longestRepeatMs;
      if (isBack) {
        utcMs = clockMs - this.secondOffset * minuteMs;
        this.repeatedQuarters = NaN;
      }
    }
    this.lastUtcMs = utcMs;
    return utcMs;
  }

  /** Offsets change on quarter hours only, so they are looked up once per quarter. */
  private enter(quarter: number, clockMs: number): void {
    const wasRepeated = this.firstOffset !== this.secondOffset;
    const isNext = quarter === this.quarter + 1;
    this.quarter = quarter;
    if (!Number.isNaN(this.habit.fixedOffset)) return this.keep(this.habit.fixedOffset);
    const before = this.offsetMinutes(clockMs - 26 * hourMs);
    const after = this.offsetMinutes(clockMs + 26 * hourMs);
    const fits = [before, after].filter((offset) => this.offsetMinutes(clockMs - offset * minuteMs) === offset);
    if (this.isMissing && fits.length > 0 && isNext && this.missingHourRows >= fewestMissingRows) {
      this.habit.fixedOffset = before;
      return this.keep(before);
    }
    this.isMissing = fits.length === 0;
    this.firstOffset = fits[0] ?? before;
    this.secondOffset = fits[1] ?? this.firstOffset;
    this.followRepeat(wasRepeated, isNext, quarter);
  }

  private keep(offset: number): void {
    this.isMissing = false;
    this.firstOffset = offset;
    this.secondOffset = offset;
  }

  /** An hour of which every quarter holds rows, and behind which the log goes on without having gone back. */
  private followRepeat(wasRepeated: boolean, isNext: boolean, quarter: number): void {
    const isRepeated = this.firstOffset !== this.secondOffset;
    if (isRepeated) this.repeatedQuarters = wasRepeated && isNext ? this.repeatedQuarters + 1 : 1;
    else if (wasRepeated && isNext && this.repeatedQuarters === hourMs / quarterMs)
      this.unrepeatedHoursMs.push(quarter * quarterMs - hourMs);
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

const dayMs = 24 * hourMs;

/** Moments of a span at which the clocks of a time zone are changed, UTC ms, rising; none where no zone is given. */
export async function clockChanges(timezone: string | null, startMs: number, endMs: number): Promise<number[]> {
  if (timezone === null) return [];
  const offset = await zoneOffset(timezone);
  const changes: number[] = [];
  // Clocks are changed on whole quarters of an hour, and not twice a day.
  for (let fromMs = startMs; fromMs < endMs; fromMs += dayMs) {
    if (offset(fromMs) === offset(fromMs + dayMs)) continue;
    let ms = Math.ceil(fromMs / quarterMs) * quarterMs;
    while (offset(ms) === offset(fromMs)) ms += quarterMs;
    if (ms < endMs) changes.push(ms);
  }
  return changes;
}
