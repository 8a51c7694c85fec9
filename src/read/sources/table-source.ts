import { LogProblem } from '../../model/problem.js';
import { statOf } from './byte-source.js';
import { reasonOf } from '../../model/reason-of.js';
import type { ParquetRows } from './parquet-rows.js';
import type { EndRows } from './parquet-worker.js';
import { partOf, type TableCell, type TablePart } from './table-part.js';
import type { TextRef } from './text-source.js';
import { startSheetExtent, type SheetExtent } from './sheet-extent.js';
import { demandModestZip } from './zip-source.js';

/** Workbooks are held whole while they are read; larger ones are refused. */
const largestTableBytes = 200 * 1024 * 1024;

/** Unpacked, a workbook takes six times as much memory (measured: 300 MB took 1.8 GB). */
const largestUnpackedBytes = 256 * 1024 * 1024;

/** The sheets of a workbook that hold anything. */
export async function tableParts(path: string): Promise<TextRef[]> {
  await demandSize(path);
  await demandModestSheets(path);
  const sheets = await readSheets(path);
  return sheets.map(({ sheet }) => ({ name: `${path}!${sheet}`, path, part: sheet, container: 'workbook' as const }));
}

async function demandModestSheets(path: string): Promise<void> {
  const extents = new Map<string, SheetExtent>();
  await demandModestZip(path, largestUnpackedBytes, (entry, data) => {
    const extent = extents.get(entry) ?? startSheetExtent();
    extents.set(entry, extent);
    extent.take(data);
  });
  for (const extent of extents.values()) extent.demandModest(path);
}

async function filledSize(path: string): Promise<number> {
  const { size } = await statOf(path);
  if (size > 0) return size;
  throw new LogProblem('empty-file', { file: path }, 'The file is empty.', 'Check the export; the rest is read.');
}

async function demandSize(path: string): Promise<void> {
  if ((await filledSize(path)) > largestTableBytes)
    throw new LogProblem(
      'too-large',
      { file: path },
      `Workbooks over ${largestTableBytes / 1048576} MB are not read, because they must be held in memory.`,
      'Export it as CSV, which has no limit.',
    );
}

type Row = readonly unknown[];

async function readSheets(path: string): Promise<{ sheet: string; data: Row[] }[]> {
  const { default: readWorkbook } = await import('read-excel-file/node');
  try {
    const sheets = await readWorkbook(path);
    return sheets.map(({ sheet, data }) => ({ sheet, data: data as Row[] })).filter(({ data }) => data.length > 0);
  } catch (error) {
    throw new LogProblem(
      'unreadable-file',
      { file: path },
      `The workbook cannot be read (${damageOf(error)}).`,
      'Save it again as .xlsx or as CSV.',
      { cause: error },
    );
  }
}

/** All rows of a sheet, the first of them line 1. Throws LogProblem. */
export async function* readSheet(ref: TextRef): AsyncGenerator<TablePart> {
  await demandSize(ref.path);
  const data = (await readSheets(ref.path)).find((it) => it.sheet === ref.part)?.data ?? [];
  yield { count: data.length, lineOf: (row) => row + 1, cellsOf: (row) => data[row]!.map((cell) => cellText(cell)) };
}

/** The names and rows of a Parquet file, the names as line 1, in parts that fit the memory. Throws LogProblem. */
export async function* readParquet(path: string, ends: EndRows | null = null): AsyncGenerator<TablePart> {
  const { readParquetRows } = await import('./parquet-rows.js');
  const size = await filledSize(path);
  try {
    let isHeader = true;
    for await (const part of readParquetRows(path, size, ends)) {
      yield isHeader ? partOf([{ line: 1, cells: part.names }]) : parquetPart(part);
      isHeader = false;
    }
  } catch (error) {
    throw new LogProblem(
      'unreadable-file',
      { file: path },
      `The Parquet file cannot be read (${damageOf(error)}).`,
      'Write it with snappy, gzip or no compression and in row groups of 100,000 rows, or export it as CSV.',
      { cause: error },
    );
  }
}

function parquetPart({ isUtc, firstRow, count, columns }: ParquetRows): TablePart {
  const cells = new Array<TableCell>(columns.length).fill('');
  return {
    count,
    lineOf: (row) => firstRow + 2 + row,
    cellsOf(row) {
      for (let c = 0; c < columns.length; c++) {
        const cell = columns[c]![row];
        cells[c] = typeof cell === 'number' && Number.isFinite(cell) ? cell : cellText(cell, isUtc[c]);
      }
      return cells;
    },
  };
}

/** A cell holds no more (common practice of all spreadsheets); a longer text is no reading, and is not looked at whole. */
const longestCell = 32_767;

/** Times become ISO texts: with Z where they are instants, else without offset, as the sheet shows them. */
function cellText(cell: unknown, isUtc = false): string {
  if (cell === null || cell === undefined) return '';
  if (!(cell instanceof Date)) return String(cell).slice(0, longestCell);
  if (Number.isNaN(cell.getTime())) return '';
  return isUtc ? cell.toISOString() : dateText(cell);
}

/** A cell of a clock alone is counted from day 0, which lies in 1899 or 1904 (ECMA-376 part 1, 18.17.4). */
const lastYearOfDayZero = 1904;

/**
 * ISO text without offset, as the sheet shows it: a date, a clock, or both. A count of days hardly ever meets a whole
 * second, and the ms below it is cut off on the way here.
 */
function dateText(date: Date): string {
  const ms = date.getTime();
  const nearMs = Math.round(ms / 1000) * 1000;
  const [day, clock] = new Date(Math.abs(nearMs - ms) <= 1 ? nearMs : ms).toISOString().slice(0, -1).split('T');
  if (date.getUTCFullYear() <= lastYearOfDayZero) return clock!;
  return clock === '00:00:00.000' ? day! : `${day}T${clock}`;
}

/** A library that stumbles over a damaged file names its own insides; nobody is helped by those. */
function damageOf(error: unknown): string {
  const isInside = error instanceof TypeError || error instanceof RangeError;
  return isInside || /\b(undefined|NaN|null)\b/.test((error as Error).message)
    ? 'its content is damaged'
    : reasonOf(error);
}
