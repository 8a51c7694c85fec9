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

/** What it says: the columns first, then rows whenever it is told to go on, then that it is done; or an error. */
export type ParquetSays =
  | { readonly names: readonly string[]; readonly isUtc: readonly boolean[] }
  | { readonly firstRow: number; readonly rows: readonly (readonly unknown[])[] }
  | { readonly isDone: true }
  /** `isInside` = the library stumbled over its own insides. */
  | { readonly error: string; readonly isInside: boolean };

/**
 * The worker as text, because a file of its own would have to be found both in the sources and in the build. It runs
 * apart since a damaged page can make the library count down from below zero for ever, which nothing in the same thread
 * could stop; and since its readers of columns go on when the whole has failed, and would end the program.
 *
 * Columns are unfolded one after the other, since the library holds on to all that it reads in one call. By the
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
  for (const [rowStart, rowEnd] of ends ? endsOf(Number(metadata.num_rows), ends) : groups) {
    const columns = [];
    for (const name of names) {
      const parts = [];
      const onChunk = ({ columnData, rowStart, rowEnd }) => parts.push({ data: packed(columnData), rowStart, rowEnd });
      await parquetRead({ file, metadata, columns: [name], rowStart, rowEnd, onChunk, compressors, useOffsetIndex: true });
      columns.push(parts);
    }
    for (let firstRow = rowStart; firstRow < rowEnd; firstRow += rowsAtOnce) {
      await goOn();
      parentPort.postMessage({ firstRow, rows: rowsOf(columns, firstRow, Math.min(rowEnd, firstRow + rowsAtOnce)) });
    }
  }
  await goOn();
  parentPort.postMessage({ isDone: true });
}

function groupsOf({ row_groups: groups }) {
  let at = 0;
  return groups.map(({ num_rows: rows }) => [at, (at += Number(rows))]);
}

function endsOf(rows, { first, last }) {
  return rows <= first + last ? [[0, rows]] : [[0, first], [rows - last, rows]];
}

/** The library's arrays take three times as much as plain numbers do. */
const packed = (cells) =>
  Array.isArray(cells) && cells.every((cell) => typeof cell === 'number') ? Float64Array.from(cells) : cells;

function rowsOf(columns, from, to) {
  const rows = Array.from({ length: to - from }, () => new Array(columns.length).fill(null));
  columns.forEach((parts, column) => {
    for (const { data, rowStart, rowEnd } of parts)
      for (let row = Math.max(from, rowStart); row < Math.min(to, rowEnd); row++)
        rows[row - from][column] = plain(data[row - rowStart]);
  });
  return rows;
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
