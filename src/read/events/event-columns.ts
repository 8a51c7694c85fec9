import type { TimeFormat } from '../../model/log-file.js';
import { DAY_MS } from '../../model/time-units.js';
import { compileTime, detectTimeFormat, joinDateAndClock, type TimeOptions } from '../times/time-format.js';
import { parseClock, parseDateTime } from '../times/time-text.js';
import { saysUtc } from '../times/utc-names.js';
import { holdsClock } from './cell-looks.js';
import type { EventColumns, TimeColumns } from './event-table.js';
import { eventState, type EventState } from './state-words.js';

export type Cells = readonly string[];

/** The trimmed cell of a column; '' where the file has no such column or the row is short. */
export function cellOf(cells: Cells, column: number | undefined): string {
  return column === undefined ? '' : (cells[column] ?? '').trim();
}

/** The text of a moment that may stand in two columns. */
export function momentText(cells: Cells, columns: TimeColumns): string {
  const [first, second] = columns;
  return second === undefined ? cellOf(cells, first) : joinDateAndClock(cellOf(cells, first), cellOf(cells, second));
}

/** So many of the rows in which an alarm comes do not say how long it stood, where that stands in the row of its end (own choice). */
const mostOf = 0.8;

/**
 * The columns of an alarm log without its durations, where these stand only in the rows that say gone: the alarm has a row
 * of its own for its coming, and the time beside the duration is its end.
 */
export function withoutDurationsOfEnds(columns: EventColumns, rows: readonly Cells[]): EventColumns {
  const { duration, state, end, ...rest } = columns;
  if (duration === undefined || state === undefined || end !== undefined) return columns;
  const of = (wanted: EventState): Cells[] => rows.filter((cells) => eventState(cellOf(cells, state)) === wanted);
  const come = of('active');
  const open = come.filter((cells) => /^[0:.\s-]*$/u.test(cellOf(cells, duration)));
  const isOfEnds = come.length > 0 && of('cleared').length > 0 && open.length >= mostOf * come.length;
  return isOfEnds ? { ...rest, state } : columns;
}

function isClockAlone(text: string): boolean {
  return /^\d{1,2}[:.h]\d{2}/iu.test(text) && parseClock(text) !== null;
}

/** Reads the moments of a row; NaN where a cell is blank or holds no time. */
export interface MomentReader {
  readonly format: TimeFormat;
  readonly start: (cells: Cells) => number;
  readonly end: (cells: Cells) => number;
  readonly acknowledged: (cells: Cells) => number;
  /** Whether the start says more than a day; a list of days alone, such as of stops over weeks, never does. */
  readonly hasClock: (cells: Cells) => boolean;
}

/**
 * Makes the reader of a file's moments from sample rows. All time columns of a file share one format.
 *
 * @param toUtc Turns the log's clock, counted as if it were UTC, into UTC; not asked where the name of the column says UTC.
 * @returns null when the start column is none of times. Never throws.
 */
export function momentReader(
  columns: EventColumns,
  samples: readonly Cells[],
  toUtc: (clockMs: number) => number,
  options: TimeOptions,
): MomentReader | null {
  const given = [columns.start, columns.end, columns.acknowledged].filter((found) => found !== undefined);
  const texts = given.map((found) =>
    samples
      .filter((cells) => cellOf(cells, found[0]) !== '')
      .map((cells) => momentText(cells, found))
      .filter((text) => /\d/u.test(text) && !isClockAlone(text)),
  );
  const format = detectTimeFormat(texts.flat(), options) ?? detectTimeFormat(texts[0] ?? [], options);
  if (!format) return null;
  const read = saysUtc(options.columnName ?? '') ? compileTime(format) : compileTime(format, toUtc);
  const reader = (found: TimeColumns | undefined) => (cells: Cells) =>
    found === undefined ? NaN : read(momentText(cells, found));
  const start = reader(columns.start);
  const hasClock = (cells: Cells): boolean => {
    const text = momentText(cells, columns.start).trim();
    const time = format.kind === 'date' ? parseDateTime(text, format.order) : null;
    return time === null || holdsClock(text, time.clockStart);
  };
  // A clock alone is of the day that the row says, or of the next.
  const withDayOfStart =
    (column: number) =>
    (cells: Cells): number => {
      const text = cellOf(cells, column);
      if (!isClockAlone(text) || format.kind !== 'date') return read(text);
      const startText = momentText(cells, columns.start);
      const day = startText.slice(0, parseDateTime(startText, format.order)?.clockStart ?? 0);
      const ms = read(`${day.trim()} ${text}`);
      return ms + (ms < start(cells) ? DAY_MS : 0);
    };
  // Of two clocks beside one date the later may have passed midnight.
  const later = (found: TimeColumns | undefined) => {
    const readLater = reader(found);
    if (found?.length === 1 && found[0] !== columns.start[0]) return withDayOfStart(found[0]);
    if (found?.[0] !== columns.start[0]) return readLater;
    const isBlank = (cells: Cells): boolean => found.length === 2 && cellOf(cells, found[1]) === '';
    return (cells: Cells): number =>
      isBlank(cells) ? NaN : readLater(cells) + (readLater(cells) < start(cells) ? DAY_MS : 0);
  };
  return { format, start, end: later(columns.end), acknowledged: later(columns.acknowledged), hasClock };
}
