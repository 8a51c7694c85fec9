import type { LogFile } from '../../model/log-file.js';
import type { TextRecord } from '../sources/records.js';
import { plainList, type PlainList } from './by-hand/plain-list.js';
import type { Cells } from './event-columns.js';
import { listHeaderAt } from './list-header.js';
import type { LogSpan } from './moments-near-log.js';
import type { EventFileKind, EventTable } from './event-table.js';
import { recogniseEvents } from './recognise.js';

/** Rows above the header in which it is looked for. */
const LARGEST_PREAMBLE = 30;
/** Between the names of a table and its first row stands a row of units at most. */
const ROWS_BETWEEN = 2;

/** The table of a file, and its rows among those looked at. */
export interface FoundTable {
  readonly table: EventTable;
  /** Names of the columns as the file has them. */
  readonly header: Cells;
  readonly rows: readonly TextRecord[];
  readonly list: PlainList;
}

const calledKinds: readonly EventFileKind[] = ['alarm', 'maintenance', 'stops'];

/** The row with the names of a list, the survey's header where it fits, else the first row that makes a header, else none. */
export function findTable(file: LogFile, records: readonly TextRecord[], log: LogSpan): FoundTable | null {
  const called = calledKinds.find((kind) => kind === file.kind) ?? null;
  const tableBelow = (top: number): FoundTable | null =>
    tableOf(records[top]!.cells, records.slice(top + 1), records.slice(0, top), called, log);
  const at = listHeaderAt(records.map(({ cells }) => cells));
  const firstRow = records.findIndex(({ line }) => line >= file.firstDataLine);
  const isSurveyed = records[at]?.cells.join() === file.header.join() && firstRow - at <= ROWS_BETWEEN;
  const listed = at >= 0 && !isSurveyed ? tableBelow(at) : null;
  if (listed) return listed;
  const body = records.filter(({ line }) => line >= file.firstDataLine);
  const preamble = records.filter(({ line }) => line < file.firstDataLine);
  const surveyed = body.length > 0 && file.header.length > 0 ? tableOf(file.header, body, preamble, called, log) : null;
  if (surveyed) return surveyed;
  for (let top = 0; top < Math.min(LARGEST_PREAMBLE, records.length - 1); top++) {
    const found = tableBelow(top);
    if (found && records[top]!.cells.every((cell) => !/\d{1,2}[:.]\d{2}/u.test(cell))) return found;
  }
  return tableOf([], records, [], called, log);
}

/** Rows from which is told what the columns hold. */
const ROWS_OF_TABLE = 200;

function tableOf(
  header: Cells,
  rows: readonly TextRecord[],
  above: readonly TextRecord[],
  called: EventFileKind | null,
  log: LogSpan,
): FoundTable | null {
  const listOf = (records: readonly TextRecord[]): PlainList =>
    plainList({
      ...{ header, rows: records.map(({ cells }) => cells), above: above.map(({ cells }) => cells) },
      log: { startMs: log.start, endMs: log.end },
    });
  const list = listOf(rows.slice(0, ROWS_OF_TABLE));
  const table = recogniseEvents(list.header, list.rows, called);
  return table && { table, header, rows, list: rows.length > ROWS_OF_TABLE ? listOf(rows) : list };
}
