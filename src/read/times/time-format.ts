import type { TimeFormat } from '../../model/log-file.js';
import { foldText } from '../../words/fold.js';
import { clocksApartMs, countOf, detectCount, leastShare, putBack, readCount } from './counts.js';
import { detectElapsed, type CountContext } from './elapsed.js';
import { gridOfRoundedDates } from './rounded-days.js';
import { parseClock, parseDateTime, weekdayOf } from './time-text.js';

export interface TimeOptions {
  /** How to read 03/04/2026 where nothing decides. */
  readonly dates?: 'day-first' | 'month-first' | undefined;
  /** Name of the column, for "Time (s)" and the like. */
  readonly columnName?: string;
  /** Decimal mark of the file. */
  readonly decimal?: '.' | ',';
  /** When the file was last written, UTC ms: no row of it is later. */
  readonly writtenMs?: number;
  /** What the file says of a count since a start. */
  readonly count?: CountContext;
}

const nothingSaid: CountContext = { start: null, intervalMs: NaN };

/** In a column that is called time or date: lists kept by hand hold a few words among few rows (own choice). */
const leastShareNamed = 0.6;

/**
 * Tells how the cells of a column hold time, from all of them together.
 *
 * @param cells Cells from all over the file, in file order; blank ones do not count.
 * @returns null when fewer than four in five are times (three in five where the column is called so). Never throws.
 */
export function detectTimeFormat(cells: readonly string[], options: TimeOptions = {}): TimeFormat | null {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return null;
  const decimals = filled.filter((cell) => decimalNumber.test(cell)).length;
  const dates = decimals > (1 - leastShare) * filled.length ? null : detectDates(filled, options);
  const { columnName = '', count = nothingSaid, writtenMs } = options;
  const numbers = filled.map(countOf);
  const isNamed = isTimeName(columnName);
  return (
    dates ??
    detectCount(filled, numbers, { columnName, isTimeName: isNamed, writtenMs }) ??
    detectElapsed(filled, numbers, columnName, isNamed, count)
  );
}

/** No date has one mark only. */
const decimalNumber = /^[-+]?\d+[.,]\d+$/;

function detectDates(cells: readonly string[], options: TimeOptions): TimeFormat | null {
  const orders = (['ymd', 'dmy', 'mdy'] as const).map((order) => {
    const parsed: ReturnType<typeof parseDateTime>[] = [];
    // Rows of several tags repeat their time.
    cells.forEach((cell, i) => parsed.push(cell === cells[i - 1] ? parsed[i - 1]! : parseDateTime(cell, order)));
    const good = parsed.filter((time) => time !== null);
    return { order, good, reach: reachOf(good.map((time) => time.ms)), fromMs: good[0]?.ms ?? NaN };
  });
  const most = Math.max(...orders.map((candidate) => candidate.good.length));
  const least = isTimeName(options.columnName ?? '') ? leastShareNamed : leastShare;
  if (most < least * cells.length || most === 0) return null;
  const fitting = orders.filter((candidate) => candidate.good.length === most);
  const isAbsolute = fitting[0]!.good.every((time) => time.hasOffset);
  const base = { kind: 'date' as const, unitMs: 1, isAbsolute };
  const choice = chooseOrder(cells, fitting, options);
  return { ...base, ...choice };
}

/** Largest distance between neighbours: the wrong order makes times jump by months. */
function reachOf(times: readonly number[]): number {
  let reach = 0;
  for (let i = 1; i < times.length; i++) reach += Math.abs(times[i]! - times[i - 1]!);
  return reach;
}

type Candidate = { order: TimeFormat['order']; reach: number; fromMs: number };
type OrderChoice = Pick<TimeFormat, 'order' | 'isUndecided' | 'why'>;

function chooseOrder(cells: readonly string[], fitting: readonly Candidate[], options: TimeOptions): OrderChoice {
  if (/^\W*(?:\p{L}+,? +)?\d{4}/u.test(cells[0]!)) return decided('ymd', 'the year stands first');
  const bare = cells[0]!.slice(weekdayOf(cells[0]!).length);
  if (/\p{L}{3}/u.test(bare) && !/^\d{1,2}[-/.]\d{1,2}[-/.]/.test(bare)) return decided('dmy', 'the month is a name');
  const byWeekday = orderOfWeekdays(cells, fitting);
  if (byWeekday) return decided(byWeekday, `${orderWords[byWeekday]}: so the days of the week fit`);
  const isYearFirst = isTwoDigitYearFirst(cells);
  const isShort = cells.every((cell) => twoDigitsEach.test(cell)) && options.writtenMs !== undefined;
  const numbers = fitting.filter(({ order }) => order !== 'ymd' || isYearFirst || isShort);
  if (numbers.length === 0) return decided('ymd', 'the year stands first');
  const [near, far] = [...numbers].sort((a, b) => a.reach - b.reach);
  if (far && near!.reach * 3 < far.reach && near!.reach > 0)
    return decided(near!.order, `${orderWords[near!.order]}: the other order makes the time jump to and fro`);
  if (isYearFirst) return decided('ymd', 'the year stands first');
  const [only, ...others] = notInOtherTimes(numbers, options.writtenMs);
  if (!only || others.length > 0) return undecidedOrder(cells, options);
  const why =
    numbers.length > 1 ? 'any other order is years from when the file was written' : 'no other order fits every row';
  return decided(only.order, `${orderWords[only.order]}: ${why}`);
}

const weekdays = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

/** The only order in which every date falls on the day of the week that stands before it; null where they do not tell. */
function orderOfWeekdays(cells: readonly string[], fitting: readonly Candidate[]): TimeFormat['order'] | null {
  const said = [...new Set(cells)].map((cell) => ({ cell, day: weekdays.indexOf(cell.slice(0, 3).toLowerCase()) }));
  if (said.some(({ day }) => day < 0)) return null;
  const isTrue = ({ order }: Candidate): boolean =>
    said.every(({ cell, day }) => new Date(parseDateTime(cell, order)?.ms ?? NaN).getUTCDay() === day);
  const [only, ...others] = fitting.filter(isTrue);
  return only && others.length === 0 ? only.order : null;
}

/** "26-09-06" with its parts parted as ISO 8601 has it; slashes and dots go with the year at the end. */
const twoDigitsEach = /^(\d{2})-(\d{2})-(\d{2})(?!\d)/;
/** Of two readings of a date that lie so far apart the later one is meant: logs are not kept for years (own choice). */
const oldMs = 5 * 365.25 * 86_400_000;

/** Where the year may be the first number or the last, those orders that put it behind the writing of the file, or years before. */
function notInOtherTimes(candidates: readonly Candidate[], writtenMs = Infinity): readonly Candidate[] {
  if (!candidates.some(({ order }) => order === 'ymd')) return candidates;
  const possible = candidates.filter(({ fromMs }) => fromMs <= writtenMs + clocksApartMs);
  const latestMs = Math.max(...possible.map(({ fromMs }) => fromMs));
  return possible.filter(({ fromMs }) => fromMs > latestMs - oldMs);
}

const orderWords = { ymd: 'year first', dmy: 'day first', mdy: 'month first' } as const;

function decided(order: TimeFormat['order'], why: string): OrderChoice {
  return { order, isUndecided: false, why };
}

/** "21-08-16": two digits each, parted by "-", and the first part does not move while the last does. */
function isTwoDigitYearFirst(cells: readonly string[]): boolean {
  const parts = cells.map((cell) => /^(\d{2})[-/.](\d{2})[-/.](\d{2})(?!\d)/.exec(cell));
  if (parts.some((part) => part === null)) return false;
  const first = new Set(parts.map((part) => part![1]));
  const last = new Set(parts.map((part) => part![3]));
  return first.size === 1 && (last.size > 1 || cells.every((cell) => /^\d{2}-\d{2}-\d{2}T/.test(cell)));
}

function undecidedOrder(cells: readonly string[], { dates, decimal }: TimeOptions): OrderChoice {
  if (dates) return decided(dates === 'day-first' ? 'dmy' : 'mdy', `${dates.replace('-', ' ')}, as you said`);
  // Dots are the day-first notation of central Europe, and the 12-hour clock goes with the month-first one (common practice).
  if (/^\d{1,2}\. ?\d{1,2}\./.test(cells[0]!)) return decided('dmy', 'day first: dots part day, month and year');
  // Where the month stands first, decimals have points (common practice of the USA).
  if (decimal === ',') return decided('dmy', 'day first, as goes with decimal commas');
  const isTwelveHour = cells.some((cell) => /[ap]\.?m\.?$/i.test(cell)) && cells[0]!.includes('/');
  const order = isTwelveHour ? 'mdy' : 'dmy';
  const guess = isTwelveHour ? 'month first, because of the 12-hour clock' : 'day first';
  return { order, isUndecided: true, why: `nothing tells day from month; taken as ${guess}` };
}

/** The format of times that a workbook shows as dates, put back on their step where they were rounded. */
export function withGridOfDates(format: TimeFormat, cells: readonly string[]): TimeFormat {
  if (format.kind !== 'date' || format.isAbsolute) return format;
  const gridMs = gridOfRoundedDates(cells.map(compileTime(format)).filter((ms) => !Number.isNaN(ms)));
  if (Number.isNaN(gridMs)) return format;
  return { ...format, gridMs, why: `${format.why}; days of a spreadsheet, ${putBack(gridMs)}` };
}

/** Where \b of a pattern knows no letters, and where no blank parts words. */
const timeWords =
  /^(?:(?:дата|время|час|ημερομηνια|ωρα|χρονος)(?!\p{L})|aikaleima|paivays|paivamaara|pvm|kello|saat|idopont|laikas|laiks|aeg|vrijeme|vreme|thoi gian|waktu)|时间|日期|時間|時刻|日時|日付|시간|시각|일시|날짜/u;

/** Words for a time column in the languages that exports are met in (common practice). */
export function isTimeName(name: string): boolean {
  if (timeWords.test(foldText(name.trim()))) return true;
  return /^\W*(t|ts|time|date|datetime|timestamp|zeit|datum|uhrzeit|zeitstempel|zeitpunkt|heure|date[ _/]?heure|horodatage|fecha|hora|data|dataora|ora|tid|tidspunkt|dato|tijd|tijdstip|czas|cas|aika|ido|zaman|tarih|elapsed|epoch|unix)\b|time|datum|zeit|stamp/i.test(
    name,
  );
}

/**
 * Makes the function that reads cells of a format.
 *
 * @param toUtc Turns the log's clock (counted as if it were UTC) into UTC; needed only where the log does not say
 *   its offset. Without it the clock is taken as UTC.
 * @returns A function from a cell to ms since 1970, NaN for a cell that is no time. Never throws.
 */
export function compileTime(
  format: TimeFormat,
  toUtc: (clockMs: number) => number = (clockMs) => clockMs,
): (cell: string) => number {
  if (format.kind === 'date') {
    const { order, gridMs } = format;
    const onGrid = (ms: number): number => (gridMs === undefined ? ms : Math.round(ms / gridMs) * gridMs);
    return (cell) => {
      const time = parseDateTime(cell, order);
      if (!time) return NaN;
      return time.hasOffset ? time.ms : toUtc(onGrid(time.ms));
    };
  }
  if (format.kind === 'clock') return (cell) => parseClock(cell)?.ms ?? NaN;
  return (cell) => {
    const ms = readCount(cell, format);
    return format.isAbsolute || Number.isNaN(ms) ? ms : toUtc(ms);
  };
}

/** Joins split date and time cells; a clock alone is told from a date with {@link isClockColumn}. */
export function joinDateAndClock(date: string, clock: string): string {
  return `${date.trim()} ${clock.trim()}`;
}

/** True when at least four in five cells are clocks without a date. */
export function isClockColumn(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const clocks = filled.filter((cell) => /[:.hap]/i.test(cell) && parseClock(cell) !== null);
  return filled.length > 0 && clocks.length >= leastShare * filled.length;
}
