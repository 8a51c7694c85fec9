import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';

/** Reading goes on at some tens of megabytes a second; what takes so much longer has lost its way (own choice). */
const mostMs = 20_000;
const mostMsPerByte = 1e-3;

/** A cell takes some 50 bytes while it is held, and a few packed bytes may say that they are millions (own choice). */
const usualMostCells = 25_000_000;

/** What the worker answers; `isInside` = the library stumbled over its own insides. */
type Answer = { readonly rows: unknown[][] } | { readonly error: string; readonly isInside: boolean };

/**
 * The worker as text, because a file of its own would have to be found both in the sources and in the build. It runs
 * apart since a damaged page can make the library count down from below zero for ever, which nothing in the same thread
 * could stop; and since its readers of columns go on when the whole has failed, and would end the program.
 */
const workerText = `
const { parentPort, workerData } = require('node:worker_threads');
const { readFile } = require('node:fs/promises');
async function readRows() {
  const { parquetReadObjects, parquetMetadataAsync } = await import(workerData.library);
  const whole = new Uint8Array(await readFile(workerData.path)).buffer;
  const file = { byteLength: whole.byteLength, slice: async (from, to) => whole.slice(from, to) };
  const metadata = await parquetMetadataAsync(file);
  const names = metadata.schema.filter((it) => it.num_children === undefined).map((it) => it.name);
  if (Number(metadata.num_rows) * names.length > workerData.mostCells)
    throw new Error('it holds more than ' + workerData.mostCells + ' cells, too many for the memory');
  const objects = await parquetReadObjects({ file, metadata });
  return [names, ...objects.map((row) => names.map((name) => row[name]))];
}
readRows().then(
  (rows) => parentPort.postMessage({ rows }),
  (error) => parentPort.postMessage({
    error: String(error && error.message),
    isInside: error instanceof TypeError || error instanceof RangeError,
  }),
);`;

/** The content of a Parquet file is damaged, in the words of the library or of nobody. */
export class ParquetDamage extends Error {}

/**
 * Reads a whole Parquet file with hyparquet in a worker.
 *
 * @param mostCells A file that says it holds more is refused before it is unfolded.
 * @returns Rows of cells, the names of the columns first.
 * @throws ParquetDamage for any file that cannot be read, one that never comes to an end included.
 */
export async function readParquetRows(
  path: string,
  sizeBytes: number,
  mostCells = usualMostCells,
): Promise<unknown[][]> {
  const library = pathToFileURL(createRequire(import.meta.url).resolve('hyparquet')).href;
  const worker = new Worker(workerText, { eval: true, workerData: { library, path, mostCells }, stderr: true });
  try {
    const answer = await answerOf(worker, mostMs + sizeBytes * mostMsPerByte);
    if ('rows' in answer) return answer.rows;
    const isOwnWords = answer.isInside || /\b(undefined|NaN|null)\b/.test(answer.error);
    throw new ParquetDamage(isOwnWords ? 'its content is damaged' : answer.error);
  } finally {
    await worker.terminate();
  }
}

function answerOf(worker: Worker, limitMs: number): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new ParquetDamage('it comes to no end')), limitMs);
    const settle = (act: () => void): void => {
      clearTimeout(timer);
      act();
    };
    worker.once('message', (answer: Answer) => settle(() => resolve(answer)));
    worker.once('error', () => settle(() => reject(new ParquetDamage('its content is damaged'))));
    worker.once('exit', () => settle(() => reject(new ParquetDamage('its content is damaged'))));
  });
}
