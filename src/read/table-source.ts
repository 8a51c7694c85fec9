import { LogProblem } from '../model/problem.js';
import { statOf } from './byte-source.js';
import type { SampledRow } from './file-sample.js';
import type { TextRef } from './text-source.js';
import { demandModestZip } from './zip-source.js';

/** Workbooks and Parquet are held whole while they are read; larger ones are refused. */
export const largestTableBytes = 200 * 1024 * 1024;

/** Unpacked, a workbook takes six times as much memory (measured: 300 MB took 1.8 GB). */
const largestUnpackedBytes = 256 * 1024 * 1024;

/** The sheets of a workbook that hold anything. */
export async function tableParts(path: string): Promise<TextRef[]> {
  await demandSize(path);
  await demandModestZip(path, largestUnpackedBytes);
  const sheets = await readSheets(path);
  return sheets.map(({ sheet }) => ({ name: `${path}!${sheet}`, path, part: sheet, container: 'workbook' as const }));
}

async function demandSize(path: string): Promise<void> {
  const { size } = await statOf(path);
  if (size === 0)
    throw new LogProblem('empty-file', { file: path }, 'The file is empty.', 'Check the export; the rest is read.');
  if (size > largestTableBytes)
    throw new LogProblem(
      'too-large',
      { file: path },
      `Workbooks and Parquet files over ${largestTableBytes / 1048576} MB are not read, because they must be held in memory.`,
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
      `The workbook cannot be read (${reasonOf(error)}).`,
      'Save it again as .xlsx or as CSV.',
      { cause: error },
    );
  }
}

async function readParquet(path: string): Promise<Row[]> {
  const { readParquetRows } = await import('./parquet-rows.js');
  try {
    return await readParquetRows(path, (await statOf(path)).size);
  } catch (error) {
    throw new LogProblem(
      'unreadable-file',
      { file: path },
      `The Parquet file cannot be read (${reasonOf(error)}).`,
      'Write it with snappy or no compression, or export it as CSV.',
      { cause: error },
    );
  }
}

/** All rows of a sheet or a Parquet file as texts, the header first. Throws LogProblem. */
export async function readTable(ref: TextRef): Promise<string[][]> {
  await demandSize(ref.path);
  const rows =
    ref.container === 'parquet'
      ? await readParquet(ref.path)
      : (await readSheets(ref.path)).find((it) => it.sheet === ref.part)?.data;
  return (rows ?? []).map((row) => row.map(cellText));
}

/** Dates become ISO texts without offset, as the sheet shows them. */
function cellText(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? '' : cell.toISOString().slice(0, -1);
  return String(cell);
}

/** Rows of a table as a sample: all of its beginning, some of its end. */
export async function sampleTable(ref: TextRef): Promise<SampledRow[]> {
  const rows = await readTable(ref);
  const sampled = rows.map((cells, i) => ({ stretch: i < 400 ? 0 : 1, line: i + 1, cells }));
  const filled = sampled.filter((row) => row.cells.some((cell) => cell !== ''));
  return filled.length <= 800 ? filled : [...filled.slice(0, 400), ...filled.slice(-300)];
}

/** A library that stumbles over a damaged file names its own insides; nobody is helped by those. */
function reasonOf(error: unknown): string {
  const isInside = error instanceof TypeError || error instanceof RangeError;
  const { message } = error as Error;
  return isInside || /\b(undefined|NaN|null)\b/.test(message) ? 'its content is damaged' : message;
}
