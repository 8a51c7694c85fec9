import { open, stat, type FileHandle } from 'node:fs/promises';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { LogProblem } from '../../model/problem.js';
import { reasonOf } from '../../model/reason-of.js';

/** Hands out the bytes of a file from its beginning; `fill` returns 0 at the end. */
export interface ByteSource {
  /** Puts up to target.length - at bytes into target from place `at`; returns how many. Throws LogProblem. */
  fill(target: Buffer, at: number): Promise<number>;
  close(): Promise<void>;
}

/**
 * An archive that grows more than this is not a log but a trap: deflate cannot do better than 1032, and logs of
 * frozen readings stay near 100 to 300 (measured).
 */
export const largestGrowth = 500;
/** Below this size the growth does not matter. */
export const growthFreeBytes = 64 * 1024 * 1024;

/**
 * Opens a plain file. A log that grows while it is read is read to where it then ends; one that ends before
 * `expectedBytes`, its size when it was first looked at, was cut or replaced meanwhile, and that is told at its end.
 *
 * @throws LogProblem 'unreadable-file'.
 */
export async function openPlain(path: string, expectedBytes = 0): Promise<ByteSource> {
  const file = await openHandle(path);
  let doneBytes = 0;
  return {
    async fill(target, at) {
      const { bytesRead } = await file.read(target, at, target.length - at).catch((error: unknown) => {
        throw unreadable(path, error);
      });
      doneBytes += bytesRead;
      if (bytesRead === 0 && at < target.length && doneBytes < expectedBytes)
        throw shortened(path, expectedBytes, doneBytes);
      return bytesRead;
    },
    close: () => file.close(),
  };
}

function shortened(path: string, expectedBytes: number, doneBytes: number): LogProblem {
  return new LogProblem(
    'unreadable-file',
    { file: path },
    `The file was changed while it was read: it had ${expectedBytes} bytes at first and ended after ${doneBytes}.`,
    'Run again when nothing writes to it; what came before its end was read.',
  );
}

/** Opens a .gz file; stops with LogProblem 'too-large' when it unpacks to a multiple that no log reaches. */
export async function openGzip(path: string): Promise<ByteSource> {
  const sizeBytes = (await statOf(path)).size;
  const gunzip = createReadStream(path)
    .on('error', (error) => gunzip.destroy(error))
    .pipe(createGunzip({ chunkSize: 256 * 1024 }));
  return fromChunks(guardGrowth(gunzip, path, sizeBytes), path, () => gunzip.destroy());
}

async function* guardGrowth(chunks: AsyncIterable<Buffer>, path: string, packedBytes: number): AsyncGenerator<Buffer> {
  let unpackedBytes = 0;
  for await (const chunk of chunks) {
    unpackedBytes += chunk.length;
    checkGrowth(path, packedBytes, unpackedBytes);
    yield chunk;
  }
}

/** Throws LogProblem 'too-large' when an archive has grown beyond what a log can. */
export function checkGrowth(name: string, packedBytes: number, unpackedBytes: number): void {
  if (unpackedBytes < growthFreeBytes || unpackedBytes < largestGrowth * packedBytes) return;
  throw new LogProblem(
    'too-large',
    { file: name },
    `The archive unpacks to more than ${largestGrowth} times its size, which no log does; reading stopped after ${Math.round(unpackedBytes / 1e6)} MB.`,
    'Unpack it by hand and look inside before you give it to this program.',
  );
}

/** Makes a source of any series of chunks; errors become LogProblem. */
export function fromChunks(chunks: AsyncIterable<Buffer>, name: string, stop: () => void): ByteSource {
  const iterator = chunks[Symbol.asyncIterator]();
  let rest: Buffer = Buffer.alloc(0);
  let hasBegun = false;
  return {
    async fill(target, at) {
      while (rest.length === 0) {
        const next = await nextChunk(iterator, name, hasBegun);
        if (!next) return 0;
        rest = next;
        hasBegun = true;
      }
      const copied = rest.copy(target, at);
      rest = rest.subarray(copied);
      return copied;
    },
    close: async () => stop(),
  };
}

/** A small archive gives nothing before its damage is found, since it is unpacked in one piece. */
async function nextChunk(iterator: AsyncIterator<Buffer>, name: string, hasBegun: boolean): Promise<Buffer | null> {
  try {
    const { value, done } = await iterator.next();
    return done ? null : value;
  } catch (error) {
    if (error instanceof LogProblem) throw error;
    throw new LogProblem(
      'unreadable-file',
      { file: name },
      `The archive is damaged or cut off (${reasonOf(error)}).`,
      hasBegun
        ? 'What could be unpacked before that place was read; copy the file again if more is needed.'
        : 'Nothing of it was read; copy the file again, or unpack it by hand.',
      { cause: error },
    );
  }
}

/** Size of a file; throws LogProblem 'not-found' or 'unreadable-file'. */
export async function statOf(path: string) {
  try {
    return await stat(path);
  } catch (error) {
    throw unreadable(path, error);
  }
}

/** Opens a file for reading at any place; throws LogProblem. */
export async function openHandle(path: string): Promise<FileHandle> {
  try {
    return await open(path, 'r');
  } catch (error) {
    throw unreadable(path, error);
  }
}

function unreadable(path: string, error: unknown): LogProblem {
  const isMissing = (error as { code?: string }).code === 'ENOENT';
  return new LogProblem(
    isMissing ? 'not-found' : 'unreadable-file',
    { file: path },
    isMissing ? 'There is no such file or folder.' : `The file cannot be read (${reasonOf(error)}).`,
    isMissing ? 'Check the path.' : 'Check its permissions, or copy it to a local disk.',
    { cause: error },
  );
}
