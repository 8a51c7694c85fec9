import { readFile } from 'node:fs/promises';
import { writeWhole } from '../files/write-whole.js';
import { causes } from '../model/cause.js';
import { LogProblem } from '../model/problem.js';
import type { RecordEntry } from './track-record.js';

/** Name of the record inside a history folder. */
export const recordFileName = 'record.json';

/** Entries of a record file; none where there is no file. Throws LogProblem `bad-history` for a damaged one. */
export async function readRecord(path: string): Promise<RecordEntry[]> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return [];
    throw damaged(path, error);
  }
  try {
    const { entries } = JSON.parse(text) as { entries?: RecordEntry[] };
    if (!Array.isArray(entries)) throw new Error('it holds no list of entries');
    if (!entries.every(isEntry)) throw new Error('an entry lacks zone, time or what was found');
    return entries;
  } catch (error) {
    throw damaged(path, error);
  }
}

/** Adds one entry; the file is replaced whole. Throws LogProblem `bad-history` or `write-failed`. */
export async function addToRecord(path: string, entry: RecordEntry): Promise<RecordEntry[]> {
  const entries = [...(await readRecord(path)), entry];
  await writeWhole({ file: path, content: `${JSON.stringify({ schemaVersion: 1, entries }, null, 2)}\n` });
  return entries;
}

function isEntry({ zone, time, found }: RecordEntry): boolean {
  return typeof zone === 'string' && !Number.isNaN(Date.parse(time)) && causes.includes(found);
}

function damaged(file: string, cause: unknown): LogProblem {
  const why = cause instanceof Error ? cause.message : String(cause);
  return new LogProblem(
    'bad-history',
    { file },
    `The record cannot be read (${why}).`,
    'Correct it with a text editor, or move it away.',
    { cause },
  );
}
