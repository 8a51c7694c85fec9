import type { TimeFormat, TimePlace } from '../../model/log-file.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { FileShape } from './file-shape.js';
import { columnsOfTime, timeCell } from '../times/time-cell.js';
import { compileTime, detectTimeFormat, isClockColumn, isTimeName, type TimeOptions } from '../times/time-format.js';
import { secondsOfSpan } from '../times/elapsed.js';
import { parseClock } from '../times/time-text.js';
import { timeUnitOf } from '../times/time-unit.js';
import { findTimeParts, type PartColumns } from './time-parts.js';

type TimeFinding = TimePlace & Pick<FileShape, 'time'>;

/** A time stands near the front of a row; a number further back is never taken for one. */
const timeColumnsTried = 12;

/** The column of times, joined with others where date and clock, or their parts, stand apart; null = none. */
export function findTime(
  rows: readonly SampledRow[],
  header: readonly string[],
  options: TimeOptions & { readonly hasNames: boolean; readonly units: readonly string[] },
): TimeFinding | null {
  const parts = findTimeParts(rows, header, options.hasNames);
  const byParts = parts.date.length > 0 ? timeOfParts(rows, header, parts) : null;
  const found: (TimeFinding & { rank: number })[] = byParts ? [{ ...byParts, rank: partsRank }] : [];
  for (let column = 0; column < Math.min(header.length, timeColumnsTried); column++) {
    const cells = rows.map((row) => row.cells[column] ?? '');
    if (!mayBeTimes(cells)) continue;
    const time = detectTimeFormat(cells, { ...options, columnName: withUnit(header[column]!, options.units[column]) });
    if (!time) continue;
    const isBare = time.kind === 'date' && isBareDate(cells);
    const place = isBare ? placeOfDate(rows, header, column, parts.clock) : placeAt(column);
    if (isDateRare(rows, place)) {
      found.push({ ...clockAt(place.clockColumn), dayColumn: column, rank: rankOf(time, header[column]!) });
      continue;
    }
    const joined = columnsOfTime(place).size === 1 ? time : joinedFormat(rows, place, options);
    if (joined) found.push({ time: joined, ...place, rank: rankOf(joined, header[column]!) });
  }
  return found.sort((a, b) => a.rank - b.rank)[0] ?? null;
}

/** A count of minutes may say so in a row of units. */
function withUnit(name: string, unit = ''): string {
  return timeUnitOf(unit) ? `${name} (${unit.trim()})` : name;
}

/** A time in one cell is the surer one, and one that counts from 1970 needs no time zone; a count of days is less sure. */
const partsRank = 1.75;

function placeAt(timeColumn: number): TimePlace {
  return { timeColumn, clockColumn: -1, dateParts: [], clockParts: [] };
}

/** A date alone goes with a column of clocks beside it, or with hours and minutes. */
function placeOfDate(
  rows: readonly SampledRow[],
  header: readonly string[],
  column: number,
  clockParts: readonly number[],
): TimePlace {
  const clockColumn = findClock(rows, header, column);
  return { ...placeAt(column), clockColumn, clockParts: clockColumn < 0 ? clockParts : [] };
}

/** Year, month and day in columns of their own, with a clock in one column or more. */
function timeOfParts(
  rows: readonly SampledRow[],
  header: readonly string[],
  { date, clock }: PartColumns,
): TimeFinding | null {
  const clocks = header
    .slice(0, timeColumnsTried)
    .findIndex((_, column) => !date.includes(column) && isClockColumn(rows.map((row) => row.cells[column] ?? '')));
  const clockColumn = clock.length > 0 ? -1 : clocks;
  const place = { timeColumn: date[0]!, clockColumn, dateParts: date, clockParts: clock };
  const why = 'year, month and day stand in columns of their own';
  const time = { kind: 'date', order: 'ymd', unitMs: 1, isAbsolute: false, isUndecided: false, why } as const;
  const read = compileTime(time);
  const good = rows.filter(({ cells }) => !Number.isNaN(read(timeCell(cells, place)))).length;
  return good * 2 > rows.length ? { time, ...place } : null;
}

/** A column of times of day without any date beside it; null = none. */
export function findClockAlone(rows: readonly SampledRow[], header: readonly string[]): TimeFinding | null {
  const column = header
    .slice(0, timeColumnsTried)
    .findIndex((_, i) => isClockColumn(rows.map((row) => row.cells[i] ?? '')));
  return column < 0 ? null : clockAt(column);
}

function clockAt(column: number): TimeFinding {
  const why = 'times of day';
  return {
    ...placeAt(column),
    time: { kind: 'clock', order: 'ymd', unitMs: 1, isAbsolute: false, isUndecided: false, why },
  };
}

/** A date that is written where the day begins, and left blank below, beside clocks in every row. */
function isDateRare(rows: readonly SampledRow[], { timeColumn, clockColumn }: TimePlace): boolean {
  if (clockColumn < 0) return false;
  const timed = rows.filter(({ cells }) => (cells[clockColumn] ?? '').trim() !== '');
  const dated = timed.filter(({ cells }) => (cells[timeColumn] ?? '').trim() !== '');
  return dated.length * 2 < timed.length;
}

/** What is said of a file whose rows hold times of day and whose date stands nowhere. */
export function withoutDate({ header, timeColumn }: Pick<FileShape, 'header' | 'timeColumn'>): string {
  return `column "${header[timeColumn]!}" holds clocks without a date, and neither a column, nor a line above the rows, nor the file's name holds the date`;
}

/** A quick look, so that columns of readings are not read as dates row by row. */
function mayBeTimes(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '').slice(0, 20);
  const likely = filled.filter(
    (cell) =>
      /^\W*\d+([.,' ]\d+)*$/.test(cell) ||
      /\d[-/. ]+(\d|\p{L})|\p{L} ?\d/u.test(cell) ||
      !Number.isNaN(secondsOfSpan(cell.trim())),
  );
  return likely.length * 2 >= filled.length && filled.length > 0;
}

function rankOf(time: TimeFormat, name: string): number {
  const byKind = { date: 0, clock: 0, epoch: 1, 'spreadsheet-days': 2, elapsed: 3 }[time.kind];
  return byKind + (isTimeName(name) ? 0 : 0.5);
}

function isBareDate(cells: readonly string[]): boolean {
  return cells.every((cell) => !/\d[:.]\d+[:.]\d+.*\s.*\d|:/.test(cell.trim()));
}

function findClock(rows: readonly SampledRow[], header: readonly string[], dateColumn: number): number {
  for (const column of [dateColumn + 1, dateColumn - 1]) {
    const name = header[column];
    const cells = rows.map((row) => row.cells[column] ?? '');
    if (name !== undefined && (isClockColumn(cells) || (isTimeName(name) && isDigitClock(cells)))) return column;
  }
  return -1;
}

/** 050000 or 0500 beside a date, in a column that is called time. */
function isDigitClock(cells: readonly string[]): boolean {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  const isClock = (cell: string): boolean => /^\d{4,6}$/.test(cell) && parseClock(cell) !== null;
  return filled.length > 0 && filled.every(isClock);
}

function joinedFormat(rows: readonly SampledRow[], place: TimePlace, options: TimeOptions) {
  return detectTimeFormat(
    rows.map(({ cells }) => (cells[place.timeColumn]?.trim() ? timeCell(cells, place) : '')),
    options,
  );
}
