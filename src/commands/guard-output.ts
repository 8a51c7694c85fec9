import { fstatSync, writeSync } from 'node:fs';
import { reasonOf } from '../model/reason-of.js';

/**
 * Makes standard output fail in a sentence instead of a stack, or not at all: Node's stream for a file behind `>` takes
 * a short write for a whole one, so on a disk that fills up the end of the text would be lost without a word.
 *
 * A reader that leaves early (`head`, a pager) is no fault. Where errors themselves cannot be written, nobody is left to
 * be told.
 *
 * @param onFailure Called when something could not be written.
 */
export function guardOutput(onFailure: () => void): void {
  if (isFile(1)) {
    process.stdout._write = (chunk: Uint8Array, _encoding, done) => {
      try {
        for (let rest = chunk; rest.length > 0;) rest = rest.subarray(writeSync(1, rest));
        done();
      } catch (error) {
        done(error as Error);
      }
    };
  }
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    process.stderr.write(`looselead: Standard output could not be written (${reasonOf(error)}). Send it elsewhere.\n`);
    onFailure();
  });
  process.stderr.on('error', () => undefined);
}

function isFile(descriptor: number): boolean {
  try {
    return fstatSync(descriptor).isFile();
  } catch {
    return false; // closed by who started the program
  }
}
