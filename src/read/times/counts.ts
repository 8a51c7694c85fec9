import type { TimeFormat } from '../../model/log-file.js';
import { isRising } from './rising.js';
import { gridOfDays } from './rounded-days.js';
import { countedTime } from './time-text.js';
import { timeUnitOf } from './time-unit.js';
import { secondsOfSpan } from './elapsed.js';

/** Plausible span of a log: 1990 to 2100. */
const earliestMs = Date.UTC(1990, 0, 1);
const latestMs = Date.UTC(2100, 0, 1);

interface Epoch {
  readonly unitMs: number;
  readonly startMs?: number;
  readonly name: string;
  readonly isAbsolute: boolean;
}

const since1904: Epoch = {
  unitMs: 1000,
  startMs: Date.UTC(1904, 0, 1),
  name: 'seconds since 1904',
  isAbsolute: true,
};

/**
 * Counts of programs, told by their size. POSIX counts from 1970; steps of 100 ns count from 1601 or from the year 1, which
 * nanoseconds since 1970 would make 1990 or never (common practice).
 */
const epochs: readonly Epoch[] = [
  { unitMs: 1000, name: 'seconds since 1970', isAbsolute: true },
  { unitMs: 1, name: 'milliseconds since 1970', isAbsolute: true },
  { unitMs: 1e-3, name: 'microseconds since 1970', isAbsolute: true },
  {
    unitMs: 1e-4,
    startMs: Date.parse('0001-01-01T00:00:00Z'),
    name: 'steps of 100 ns since the year 1',
    isAbsolute: false,
  },
  { unitMs: 1e-4, startMs: Date.UTC(1601, 0, 1), name: 'steps of 100 ns since 1601', isAbsolute: true },
  { unitMs: 1e-6, name: 'nanoseconds since 1970', isAbsolute: true },
];

/** Clocks of loggers and of disks may be a day apart, time zones included. */
export const clocksApartMs = 2 * 86_400_000;
/** Where nothing says when the file was written; counts from 1904 that are taken for counts from 1970 lie behind it. */
const latestWrittenMs = Date.UTC(2080, 0, 1);

/** Tells counts from a fixed moment, and days of a spreadsheet, by their size; null for other numbers. */
export function detectCount(
  cells: readonly string[],
  numbers: readonly number[],
  {
    columnName,
    isTimeName,
    writtenMs = latestWrittenMs,
  }: { columnName: string; isTimeName: boolean; writtenMs?: number | undefined },
): TimeFormat | null {
  const good = numbers.filter((number) => Number.isFinite(number));
  if (good.length < leastShare * cells.length) return null;
  const base = { order: 'ymd' as const, isUndecided: false };
  const shareOf = (format: Pick<TimeFormat, 'kind' | 'unitMs' | 'startMs'>, isMeant: (ms: number) => boolean): number =>
    good.filter((number) => isMeant(countedTime(number, format))).length / good.length;
  const saidMs = timeUnitOf(columnName)?.ms ?? 0;
  // Not all need be: a clock that is not set yet counts from 0. Milliseconds of a few days are no seconds of many years.
  const found = epochs.find(
    (epoch) =>
      !(saidMs === 1 && epoch.unitMs === 1000) && shareOf({ kind: 'epoch', ...epoch }, isPlausible) >= leastShare,
  );
  if (found) {
    const isLater = (ms: number): boolean => ms > writtenMs + clocksApartMs;
    const isSince1904 =
      found.unitMs === 1000 &&
      shareOf({ kind: 'epoch', ...found }, isLater) >= leastShare &&
      shareOf({ kind: 'epoch', ...since1904 }, isPlausible) >= leastShare;
    const { name, ...epoch } = isSince1904 ? since1904 : found;
    return { ...base, kind: 'epoch', ...epoch, why: `${name}, by their size` };
  }
  if (shareOf(spreadsheetDays, isPlausible) < 1 || !isTimeName || !isRising(good)) return null;
  const gridMs = gridOfDays(cells.filter((_, i) => Number.isFinite(numbers[i])));
  const why = 'days of a spreadsheet, by their size';
  const format = { ...base, ...spreadsheetDays, isAbsolute: false, why };
  return Number.isNaN(gridMs) ? format : { ...format, gridMs, why: `${why}; ${putBack(gridMs)}` };
}

/** What is said of rounded days. */
export function putBack(gridMs: number): string {
  return `they were rounded and are put back on whole ${gridMs / 1000} s`;
}

const spreadsheetDays = { kind: 'spreadsheet-days', unitMs: 86_400_000 } as const;
/** A share of cells below this and the column is not one of times (own choice). */
export const leastShare = 0.8;

function isPlausible(ms: number): boolean {
  return ms >= earliestMs && ms < latestMs;
}

const countCell = /^\d+(?:[.,]\d+)?(?:[eE]\+?\d+)?$/;
/** Seconds since 1970 and finer have ten digits and more: three groups behind the first. */
const groupedCount = /^\d{1,3}([.,' \u00a0\u202f])\d{3}(?:\1\d{3}){2,}$/;

function withoutGroups(text: string): string {
  return groupedCount.test(text) ? text.replace(/\D/g, '') : text;
}

/** The number of a cell that counts; NaN for any other. Never throws. */
export function countOf(cell: string): number {
  const text = withoutGroups(cell);
  return countCell.test(text) ? Number(text.replace(',', '.')) : NaN;
}

/** Time of a cell in a format that counts; NaN for a cell that is no count. Never throws. */
export function readCount(cell: string, format: TimeFormat): number {
  const text = withoutGroups(cell.trim());
  if (!countCell.test(text)) return format.kind === 'elapsed' ? countedTime(secondsOfSpan(text), format) : NaN;
  // Nanoseconds have more digits than a number holds; what is finer than a microsecond is cut off first.
  if (format.unitMs === 1e-6 && /^\d{17,}$/.test(text)) return Math.round(Number(text.slice(0, -3)) * 1e-3);
  return countedTime(Number(text.replace(',', '.')), format);
}
