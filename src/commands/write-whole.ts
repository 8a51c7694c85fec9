import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { LogProblem } from '../model/problem.js';

/** Writes a file so that a reader sees the old one or the new one, never a part: temporary name, fsync, rename. */
export async function writeWhole(file: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFileAtomic(file, text);
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new LogProblem(
      'write-failed',
      { file },
      `The file could not be written (${why}).`,
      'Choose another place with --out, or free space and try again; what was there before is unchanged.',
      { cause },
    );
  }
}
