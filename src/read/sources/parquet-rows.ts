import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import {
  parquetWorkerText,
  type EndRows,
  type ParquetColumn,
  type ParquetSays,
  type ParquetWork,
} from './parquet-worker.js';

/** Reading goes on at some tens of megabytes a second; what takes so much longer has lost its way (own choice). */
const mostMs = 20_000;
const mostMsPerByte = 1e-3;

/**
 * A row group is unfolded whole, a number into 8 bytes, and a few packed bytes may say that they are millions (own
 * choice: a week of 24 zones every second in one row group is 44 million).
 */
const usualMostCells = 50_000_000;

/** For texts and values that are missing here and there, which take more than 8 bytes (own choice). */
const maxOldGenerationSizeMb = 2048;

/** Rows handed over at once; more only wait in memory (own choice). */
const rowsAtOnce = 1000;

/** The content of a Parquet file is damaged, in the words of the library or of nobody. */
export class ParquetDamage extends Error {}

/** Rows that follow each other; the row of names is not among them, and the first part has none. */
export interface ParquetRows {
  readonly names: readonly string[];
  /** Per column: its times are instants in UTC, else they are times as a clock on the wall shows them. */
  readonly isUtc: readonly boolean[];
  /** Number of the first row, from 0. */
  readonly firstRow: number;
  readonly count: number;
  readonly columns: readonly ParquetColumn[];
}

/**
 * Reads a Parquet file with hyparquet in a worker, a row group at a time.
 *
 * @param ends Only the beginning and the end are wanted.
 * @param mostCells A file with a larger row group is refused before it is unfolded.
 * @throws ParquetDamage for any file that cannot be read, one that never comes to an end included.
 */
export async function* readParquetRows(
  path: string,
  sizeBytes: number,
  ends: EndRows | null = null,
  mostCells = usualMostCells,
): AsyncGenerator<ParquetRows> {
  const library = pathToFileURL(createRequire(import.meta.url).resolve('hyparquet')).href;
  const workerData: ParquetWork = { library, path, ends, mostCells, rowsAtOnce };
  const resourceLimits = { maxOldGenerationSizeMb };
  // No flags of the program: a loader that came with them would be started anew for every file.
  const worker = new Worker(parquetWorkerText, { eval: true, workerData, resourceLimits, stderr: true, execArgv: [] });
  const limitMs = mostMs + sizeBytes * mostMsPerByte;
  try {
    const head = await answerOf(worker, limitMs);
    if (!('names' in head)) throw new ParquetDamage('its content is damaged');
    yield { ...head, firstRow: 0, count: 0, columns: [] };
    for (;;) {
      worker.postMessage('go on');
      const answer = await answerOf(worker, limitMs);
      if (!('columns' in answer)) return;
      yield { ...head, ...answer };
    }
  } finally {
    await worker.terminate();
  }
}

async function answerOf(worker: Worker, limitMs: number): Promise<Exclude<ParquetSays, { error: string }>> {
  const answer = await heardFrom(worker, limitMs);
  if (!('error' in answer)) return answer;
  const isOwnWords = answer.isInside || /\b(undefined|NaN|null)\b/.test(answer.error);
  throw new ParquetDamage(isOwnWords ? 'its content is damaged' : answer.error);
}

function heardFrom(worker: Worker, limitMs: number): Promise<ParquetSays> {
  return new Promise((resolve, reject) => {
    const fail = (why: string) => (): void => settle(() => reject(new ParquetDamage(why)));
    const heard = (answer: ParquetSays): void => settle(() => resolve(answer));
    const failed = (error: NodeJS.ErrnoException): void =>
      fail(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? tooLarge : 'its content is damaged')();
    const ended = fail('its content is damaged');
    const timer = setTimeout(fail('it comes to no end'), limitMs);
    const settle = (act: () => void): void => {
      clearTimeout(timer);
      worker.off('message', heard).off('error', failed).off('exit', ended);
      act();
    };
    worker.on('message', heard).on('error', failed).on('exit', ended);
  });
}

const tooLarge = `a row group takes more than ${maxOldGenerationSizeMb} MB of memory`;
