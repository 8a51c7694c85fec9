/** The beginning and the end of a file, in rows. */
export interface EndRows {
  readonly first: number;
  readonly last: number;
}

/** What the worker is started with. */
export interface ParquetWork {
  /** Address of the library. */
  readonly library: string;
  readonly path: string;
  /** `null` = all rows. */
  readonly ends: EndRows | null;
  /** A file with a row group of more cells is refused. */
  readonly mostCells: number;
  /** Rows handed over at once. */
  readonly rowsAtOnce: number;
}

/** Cells of a column, one below the other; plain numbers where all of them are numbers. */
export type ParquetColumn = Float64Array | readonly unknown[];

/** What it says: the columns first, then rows whenever it is told to go on, then that it is done; or an error. */
export type ParquetSays =
  | { readonly names: readonly string[]; readonly isUtc: readonly boolean[] }
  | { readonly firstRow: number; readonly count: number; readonly columns: readonly ParquetColumn[] }
  | { readonly isDone: true }
  /** `isInside` = the library stumbled over its own insides. */
  | { readonly error: string; readonly isInside: boolean };

/**
 * The worker as text, because a file of its own would have to be found both in the sources and in the build. It runs
 * apart since a damaged page can make the library count down from below zero for ever, which nothing in the same thread
 * could stop; and since its readers of columns go on when the whole has failed, and would end the program.
 *
 * Columns are unfolded one after the other, since the library holds on to all that it reads in one call. Columns of
 * numbers are handed over as they are, without a copy: cell by cell a week of 24 zones took more than twice as long. By the
 * Parquet format (LogicalTypes.md) a timestamp without its newer description is one in UTC.
 */
export const parquetWorkerText = `
const { parentPort, workerData } = require('node:worker_threads');
const zlib = require('node:zlib');
const { ends, mostCells, rowsAtOnce } = workerData;

const unpack = (inflate) => (bytes, maxOutputLength) => inflate(bytes, { maxOutputLength });
const compressors = { GZIP: unpack(zlib.gunzipSync), BROTLI: unpack(zlib.brotliDecompressSync) };
if (zlib.zstdDecompressSync) compressors.ZSTD = unpack(zlib.zstdDecompressSync);

const goOn = () => new Promise((resolve) => parentPort.once('message', resolve));
const isUtc = ({ logical_type: type, converted_type: older }) =>
  type && type.type === 'TIMESTAMP' ? type.isAdjustedToUTC : /^TIMESTAMP_/.test(older || '');

async function readAll() {
  const { asyncBufferFromFile, parquetMetadataAsync, parquetRead, parquetSchema } = await import(workerData.library);
  const file = await asyncBufferFromFile(workerData.path);
  const metadata = await parquetMetadataAsync(file);
  const fields = parquetSchema(metadata).children.map((field) => field.element);
  const names = fields.map((field) => field.name);
  const groups = groupsOf(metadata);
  if (groups.some(([from, to]) => (to - from) * names.length > mostCells))
    throw new Error('a row group holds more than ' + mostCells + ' cells, too many for the memory');
  parentPort.postMessage({ names, isUtc: fields.map(isUtc) });
  for (const { rowStart, rowEnd, wanted } of ends ? endsOf(groups, ends, hasIndex(metadata)) : groups.map(whole)) {
    const columns = [];
    for (const name of names) {
      const parts = [];
      const onChunk = ({ columnData, rowStart, rowEnd }) => parts.push({ data: packed(columnData), rowStart, rowEnd });
      await parquetRead({ file, metadata, columns: [name], rowStart, rowEnd, onChunk, compressors, useOffsetIndex: true });
      columns.push(parts);
    }
    for (const [from, to] of wanted)
      for (let firstRow = from; firstRow < to; firstRow += rowsAtOnce) {
        const count = Math.min(rowsAtOnce, to - firstRow);
        const cells = columns.map((parts) => columnOf(parts, firstRow, firstRow + count));
        await goOn();
        parentPort.postMessage({ firstRow, count, columns: cells }, cells.filter(isNumbers).map(({ buffer }) => buffer));
      }
  }
  await goOn();
  parentPort.postMessage({ isDone: true });
}

function groupsOf({ row_groups: groups }) {
  let at = 0;
  return groups.map(({ num_rows: rows }) => [at, (at += Number(rows))]);
}

const whole = ([rowStart, rowEnd]) => ({ rowStart, rowEnd, wanted: [[rowStart, rowEnd]] });

const hasIndex = ({ row_groups: [group] }) => group?.columns[0]?.offset_index_offset !== undefined;

/** Where all rows are one group, and nothing tells where its pages begin, both ends come out of one unfolding of it. */
function endsOf(groups, { first, last }, hasIndex) {
  const rows = groups.length === 0 ? 0 : groups.at(-1)[1];
  if (rows <= first + last) return [whole([0, rows])];
  const wanted = [[0, first], [rows - last, rows]];
  return groups.length === 1 && !hasIndex ? [{ rowStart: 0, rowEnd: rows, wanted }] : wanted.map(whole);
}

/** The library's arrays take three times as much as plain numbers do. */
const packed = (cells) =>
  Array.isArray(cells) && cells.every((cell) => typeof cell === 'number') ? Float64Array.from(cells) : cells;

const isNumbers = (cells) => ArrayBuffer.isView(cells) && typeof cells[0] !== 'bigint';

function columnOf(parts, from, to) {
  const used = parts.filter(({ rowStart, rowEnd }) => rowStart < to && rowEnd > from);
  const filled = used.reduce((sum, { rowStart, rowEnd }) => sum + Math.min(to, rowEnd) - Math.max(from, rowStart), 0);
  const column = filled === to - from && used.every(({ data }) => isNumbers(data))
    ? new Float64Array(to - from)
    : new Array(to - from).fill(null);
  for (const { data, rowStart, rowEnd } of used) {
    const [start, end] = [Math.max(from, rowStart), Math.min(to, rowEnd)];
    if (isNumbers(column)) column.set(data.subarray(start - rowStart, end - rowStart), start - from);
    else for (let row = start; row < end; row++) column[row - from] = plain(data[row - rowStart]);
  }
  return column;
}

/** Lists and records become texts, as a cell of a table. */
const plain = (cell) =>
  typeof cell === 'object' && cell !== null && !(cell instanceof Date)
    ? JSON.stringify(cell, (_, it) => (typeof it === 'bigint' ? String(it) : it))
    : cell;

readAll().catch((error) =>
  parentPort.postMessage({
    error: String(error && error.message),
    isInside: error instanceof TypeError || error instanceof RangeError,
  }),
);`;
