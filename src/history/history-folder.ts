import { readdir, readFile, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { writeWhole } from '../files/write-whole.js';
import type { PlantDigest } from '../model/digest.js';
import type { Findings } from '../model/findings.js';
import { isFindings } from '../model/findings-shape.js';
import { LogProblem, type ProblemNote } from '../model/problem.js';
import { fileNameOf, keyOf, runFilePattern, slim, type StoredRun } from './stored-run.js';

/** Digests beyond this size in all are dropped, the oldest first; their findings stay. A year must stay under 50 MB. */
const largestDigestBytes = 35e6;

export interface HistoryRead {
  /** By end of window, oldest first. */
  readonly runs: readonly StoredRun[];
  readonly problems: readonly ProblemNote[];
}

/**
 * Reads all runs of a history folder. There is no index to go stale: the files are the history. A file that was cut
 * short or belongs to something else is left out and told.
 *
 * @returns Nothing for a folder that is not there yet. Throws LogProblem `bad-history` when the folder cannot be read.
 */
export async function readHistory(folder: string): Promise<HistoryRead> {
  const names = (await namesIn(folder)).filter((name) => name.startsWith('run-')).sort();
  const runs: StoredRun[] = [];
  const problems: ProblemNote[] = [];
  for (const name of names) {
    if (name.endsWith('.digest')) continue;
    const run = runFilePattern.test(name) ? await readRun(join(folder, name)) : null;
    if (run) runs.push(run);
    else problems.push(unfinished(join(folder, name)));
  }
  return { runs: runs.sort((a, b) => a.findings.window.end.localeCompare(b.findings.window.end)), problems };
}

/**
 * Keeps a run: findings as JSON and the digest as `encode` gives it. A killed process leaves whole files only. Two runs
 * at once write different names, or the same content under the same name; nothing is locked.
 *
 * @throws LogProblem `write-failed`.
 */
export async function saveRun(
  folder: string,
  findings: Findings,
  digest: PlantDigest | null,
  encode: (digest: PlantDigest) => Uint8Array,
): Promise<void> {
  const file = join(folder, fileNameOf(findings));
  await writeWhole(...(digest ? [{ file: file.replace(/json$/, 'digest'), content: encode(digest) }] : []), {
    file,
    content: JSON.stringify(slim(findings)),
  });
  await dropOldDigests(folder);
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return [];
    throw new LogProblem(
      'bad-history',
      { file: folder },
      'The history folder cannot be read.',
      'Check the path and its permissions.',
      { cause: error },
    );
  }
}

async function readRun(path: string): Promise<StoredRun | null> {
  try {
    if (!(await stat(path)).isFile()) return null; // a pipe would be waited for
    const findings: unknown = JSON.parse(await readFile(path, 'utf8'));
    return isFindings(findings) ? { key: keyOf(findings), findings } : null;
  } catch {
    return null;
  }
}

function unfinished(file: string): ProblemNote {
  return {
    code: 'bad-history',
    file,
    what: 'This file of the history is not whole, or another version of the program wrote it, so it was left out.',
    todo: 'If it was cut short, delete it, and make that report again if it held a run.',
  };
}

/** Another run may have removed a file first; that is no error. */
async function dropOldDigests(folder: string): Promise<void> {
  const names = (await namesIn(folder))
    .filter((name) => name.endsWith('.digest'))
    .sort()
    .reverse();
  let bytes = 0;
  for (const name of names) {
    const path = join(folder, name);
    bytes += (await stat(path).catch(() => null))?.size ?? 0;
    if (bytes > largestDigestBytes) await unlink(path).catch(() => undefined);
  }
}
