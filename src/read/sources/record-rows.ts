import { readRecords, type OnBadRow } from './records.js';
import type { RowSource, TableCell, TableRow } from './table-part.js';
import { readSheet } from './table-source.js';

/** What one record gives to each name, and the line on which it begins. */
export interface NamedCells {
  readonly line: number;
  readonly cells: ReadonlyMap<string, TableCell>;
}

/** More names than this are no columns of a log (own choice). */
const mostNames = 5000;

/** Rows of records whose names are known: the names as a header on line 0, then the values of each below its names. */
export async function* recordRows(
  names: readonly string[],
  records: AsyncIterable<NamedCells>,
): AsyncGenerator<TableRow> {
  yield { line: 0, cells: names };
  for await (const { line, cells } of records) yield { line, cells: names.map((name) => cells.get(name) ?? '') };
}

/** All names that records use, in the order in which they are met. Empty where there are more than a log has. */
export async function namesOf(records: AsyncIterable<NamedCells>): Promise<string[]> {
  const names = new Set<string>();
  for await (const { cells } of records) {
    for (const name of cells.keys()) names.add(name);
    if (names.size > mostNames) return [];
  }
  return [...names];
}

/** Rows as they stand in the file, of a text or of a sheet. */
export async function* recordsOf(source: RowSource, onBadRow: OnBadRow): AsyncGenerator<TableRow> {
  if (source.container !== 'workbook') return yield* readRecords(source, source.encoding, source.dialect, onBadRow);
  for await (const { count, lineOf, cellsOf } of readSheet(source))
    for (let row = 0; row < count; row++) yield { line: lineOf(row), cells: cellsOf(row) };
}
