import type { TimeFormat } from '../../model/log-file.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { FileShape } from './file-shape.js';
import {
  detectTimeFormat,
  isClockColumn,
  isTimeName,
  joinDateAndClock,
  type TimeOptions,
} from '../times/time-format.js';

type TimeFinding = Pick<FileShape, 'time' | 'timeColumn' | 'clockColumn'>;

/** A time stands near the front of a row; a number further back is never taken for one. */
const timeColumnsTried = 12;

/** The column of times, joined with one of clocks where the two are parted; null = none. */
export function findTime(
  rows: readonly SampledRow[],
  header: readonly string[],
  options: TimeOptions,
): TimeFinding | null {
  const found: (TimeFinding & { rank: number })[] = [];
  for (let column = 0; column < Math.min(header.length, timeColumnsTried); column++) {
    const cells = rows.map((row) => row.cells[column] ?? '');
    if (!mayBeTimes(cells)) continue;
    const time = detectTimeFormat(cells, { ...options, columnName: header[column]! });
    if (!time) continue;
    const clockColumn = time.kind === 'date' && isBareDate(cells) ? findClock(rows, header.length, column) : -1;
    const joined = clockColumn < 0 ? time : joinedFormat(rows, column, clockColumn, options);
    if (joined) found.push({ time: joined, timeColumn: column, clockColumn, rank: rankOf(joined, header[column]!) });
  }
  return found.sort((a, b) => a.rank - b.rank)[0] ?? null;
}

/** Why no column was taken for the times. */
export function withoutTime(rows: readonly SampledRow[], header: readonly string[]): string {
  const clock = header
    .slice(0, timeColumnsTried)
    .findIndex((_, column) => isClockColumn(rows.map((row) => row.cells[column] ?? '')));
  if (clock < 0) return 'no column holds times';
  return `column "${header[clock]!}" holds clocks without a date, and no column holds the date`;
}

/** A quick look, so that columns of readings are not read as dates row by row. */
function mayBeTimes(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '').slice(0, 20);
  const likely = filled.filter(
    (cell) => /^\W*\d+([.,]\d+)?$/.test(cell) || /\d[-/. ]+(\d|\p{L})|\p{L} ?\d/u.test(cell),
  );
  return likely.length * 2 >= filled.length && filled.length > 0;
}

function rankOf(time: TimeFormat, name: string): number {
  const byKind = { date: 0, epoch: 1, 'spreadsheet-days': 2, elapsed: 3 }[time.kind];
  return byKind + (isTimeName(name) ? 0 : 0.5);
}

function isBareDate(cells: readonly string[]): boolean {
  return cells.every((cell) => !/\d[:.]\d+[:.]\d+.*\s.*\d|:/.test(cell.trim()));
}

function findClock(rows: readonly SampledRow[], width: number, dateColumn: number): number {
  for (const column of [dateColumn + 1, dateColumn - 1])
    if (column >= 0 && column < width && isClockColumn(rows.map((row) => row.cells[column] ?? ''))) return column;
  return -1;
}

function joinedFormat(rows: readonly SampledRow[], date: number, clock: number, options: TimeOptions) {
  return detectTimeFormat(
    rows.map((row) => (row.cells[date]?.trim() ? joinDateAndClock(row.cells[date], row.cells[clock] ?? '') : '')),
    options,
  );
}
