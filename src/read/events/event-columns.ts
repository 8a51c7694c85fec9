import type { TimeFormat } from '../../model/log-file.js';
import { compileTime, detectTimeFormat, joinDateAndClock, type TimeOptions } from '../times/time-format.js';
import type { EventColumns, TimeColumns } from './recognise.js';

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

/** Reads the moments of a row; NaN where a cell is blank or holds no time. */
export interface MomentReader {
  readonly format: TimeFormat;
  readonly start: (cells: Cells) => number;
  readonly end: (cells: Cells) => number;
  readonly acknowledged: (cells: Cells) => number;
}

/**
 * Makes the reader of a file's moments from sample rows. All time columns of a file share one format.
 *
 * @param toUtc Turns the log's clock, counted as if it were UTC, into UTC.
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
    samples.map((cells) => momentText(cells, found)).filter((text) => /\d/u.test(text)),
  );
  const format = detectTimeFormat(texts.flat(), options) ?? detectTimeFormat(texts[0] ?? [], options);
  if (!format) return null;
  const read = compileTime(format, toUtc);
  const reader = (found: TimeColumns | undefined) => (cells: Cells) =>
    found === undefined ? NaN : read(momentText(cells, found));
  return {
    format,
    start: reader(columns.start),
    end: reader(columns.end),
    acknowledged: reader(columns.acknowledged),
  };
}
