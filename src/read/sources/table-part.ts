import type { LogFile } from '../../model/log-file.js';
import type { TextRef } from './text-source.js';

/** What is needed to read the rows of a file. */
export type RowSource = TextRef & Pick<LogFile, 'encoding' | 'dialect' | 'form'>;

/** A finite number, where the cell holds one and not its text, or a text. */
export type TableCell = string | number;

/** Rows of a table that follow each other. */
export interface TablePart {
  readonly count: number;
  /** The line a row stands on, counted from 1 as the rows are from 0; several may stand on one. A header that the file itself does not hold is line 0. */
  lineOf(row: number): number;
  /** The cells of a row, counted from 0. Valid until the next call: the room is used again. */
  cellsOf(row: number): readonly TableCell[];
}

/** A row with the line it stands on. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly TableCell[];
}

/** Rows handed over at once (own choice). */
const rowsAtOnce = 1000;

/** Puts rows that come one by one together to parts. */
export async function* inParts(rows: AsyncIterable<TableRow>): AsyncGenerator<TablePart> {
  let part: TableRow[] = [];
  for await (const row of rows) {
    if (part.push(row) < rowsAtOnce) continue;
    yield partOf(part);
    part = [];
  }
  if (part.length > 0) yield partOf(part);
}

export function partOf(rows: readonly TableRow[]): TablePart {
  return { count: rows.length, lineOf: (row) => rows[row]!.line, cellsOf: (row) => rows[row]!.cells };
}
