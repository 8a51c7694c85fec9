import { createReadStream } from 'node:fs';
import { LogProblem } from '../../model/problem.js';
import { fromChunks, checkGrowth, type ByteSource } from './byte-source.js';

/** Names are only ever shown and compared, never used as paths, so "../" in them can do no harm. */
export interface ZipEntry {
  readonly name: string;
  readonly packedBytes: number;
}

/** More entries than this are not looked at (a year of hourly files is 8760). */
const mostEntries = 20_000;
/** Small pieces, because each may grow a thousandfold while it is unpacked. */
const pieceBytes = 16 * 1024;

/** Lists the files in a .zip, folders left out. Throws what the stream throws; never unpacks anything. */
export async function listZip(path: string): Promise<ZipEntry[]> {
  const { Unzip } = await import('fflate');
  const entries: ZipEntry[] = [];
  const unzip = new Unzip((file) => {
    if (!file.name.endsWith('/') && entries.length < mostEntries)
      entries.push({ name: file.name, packedBytes: file.size ?? 0 });
  });
  for await (const piece of createReadStream(path, { highWaterMark: 256 * 1024 })) unzip.push(piece as Buffer);
  unzip.push(new Uint8Array(0), true);
  return entries;
}

/**
 * Unpacks a .zip once without keeping anything, to learn how large it is before a reader that must hold it whole does
 * the same. What the archive itself says of its sizes need not be true.
 *
 * @param look Gets every piece of every entry, in order.
 * @throws LogProblem 'too-large'. A damaged archive is no matter here; its reader tells.
 */
export async function demandModestZip(
  path: string,
  largestBytes: number,
  look: (entry: string, data: Uint8Array) => void = () => {},
): Promise<void> {
  const { Unzip, UnzipInflate } = await import('fflate');
  let packedBytes = 0;
  let unpackedBytes = 0;
  const unzip = new Unzip((file) => {
    file.ondata = (error, data) => {
      if (error) return;
      unpackedBytes += data.length;
      look(file.name, data);
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  for await (const piece of createReadStream(path, { highWaterMark: pieceBytes })) {
    packedBytes += (piece as Buffer).length;
    try {
      unzip.push(piece as Buffer);
    } catch {
      return;
    }
    checkGrowth(path, packedBytes, unpackedBytes);
    if (unpackedBytes > largestBytes) throw tooLarge(path, largestBytes);
  }
}

function tooLarge(file: string, largestBytes: number): LogProblem {
  return new LogProblem(
    'too-large',
    { file },
    `It unpacks to more than ${Math.round(largestBytes / 1048576)} MB, which would have to be held in memory.`,
    'Export it as CSV, which has no limit.',
  );
}

/** Opens one entry of a .zip; unpacks while it is read. */
export function openZipEntry(path: string, entry: string): ByteSource {
  const name = `${path}!${entry}`;
  const pieces = createReadStream(path, { highWaterMark: pieceBytes });
  return fromChunks(unpackEntry(pieces, entry, name), name, () => pieces.destroy());
}

async function* unpackEntry(pieces: AsyncIterable<Buffer>, entry: string, name: string): AsyncGenerator<Buffer> {
  const { Unzip, UnzipInflate } = await import('fflate');
  const ready: Buffer[] = [];
  const state = { isDone: false, failure: null as Error | null, packedBytes: 0, unpackedBytes: 0 };
  const unzip = new Unzip((file) => {
    if (file.name !== entry || state.unpackedBytes > 0) return;
    file.ondata = (error, data, isFinal) => {
      if (error) state.failure = error;
      else ready.push(Buffer.from(data));
      state.isDone ||= isFinal;
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  for await (const piece of pieces) {
    state.packedBytes += piece.length;
    unzip.push(piece);
    if (state.failure) throw state.failure;
    for (const chunk of ready.splice(0)) {
      state.unpackedBytes += chunk.length;
      checkGrowth(name, state.packedBytes, state.unpackedBytes);
      yield chunk;
    }
    if (state.isDone) return;
  }
  if (!state.isDone) throw new Error('the archive ends in the middle of the entry');
}
