import { appendFile, readFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { makeFolder } from '../files/make-folder.js';
import { reasonOf } from '../model/reason-of.js';
import { causes } from '../model/cause.js';
import { LogProblem, type Place, type ProblemNote } from '../model/problem.js';
import type { PlacedEntry, RecordEntry } from '../model/record.js';

/** Name of the record inside a history folder: one finding a line, each a JSON object. */
export const recordFileName = 'record.jsonl';

export interface RecordRead {
  /** False where nobody has noted anything yet. */
  readonly isKept: boolean;
  /** In the order of the file. */
  readonly entries: readonly PlacedEntry[];
  /** Lines that could not be used; the others count all the same. */
  readonly problems: readonly ProblemNote[];
}

/** Reads the record. Throws LogProblem `bad-history` when the file cannot be read at all. */
export async function readRecord(path: string): Promise<RecordRead> {
  const text = await textOf(path);
  const entries: PlacedEntry[] = [];
  const problems: ProblemNote[] = [];
  for (const [i, line] of (text ?? '')
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (line.trim() === '') continue;
    const place = { file: path, line: i + 1 };
    const read = entryOf(line);
    if (typeof read === 'string') problems.push(badLine(place, read));
    else entries.push({ ...read, place });
  }
  return { isKept: text !== null, entries, problems };
}

/**
 * Adds one line at the end, in a single write: two people who note something at the same moment lose nothing, and what
 * stands there is never written again. A last line that was cut short keeps to itself.
 *
 * @throws LogProblem `write-failed`; `bad-history` when the file cannot be read.
 */
export async function addToRecord(path: string, entry: RecordEntry): Promise<void> {
  const text = await textOf(path);
  const start = text === null || text === '' || text.endsWith('\n') ? '' : '\n';
  try {
    await makeFolder(dirname(path));
    await appendFile(path, `${start}${JSON.stringify(entry)}\n`, { flush: true });
  } catch (cause) {
    throw new LogProblem(
      'write-failed',
      { file: path },
      `The finding could not be noted (${reasonOf(cause)}).`,
      'What was noted before is unchanged. Choose another folder, or free space and try again.',
      { cause },
    );
  }
}

async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, 'utf8');
  } catch (cause) {
    if ((cause as { code?: string }).code === 'ENOENT') return null;
    throw new LogProblem(
      'bad-history',
      { file: path },
      `The record cannot be read (${reasonOf(cause)}).`,
      'Check the path and its permissions.',
      { cause },
    );
  }
}

/** The entry, or what is the matter with the line. */
function entryOf(line: string): RecordEntry | string {
  const value = parsed(line);
  if (typeof value !== 'object' || value === null) return 'This line of the record is not whole';
  const { zone, machine, time, found, note } = value as Partial<Record<keyof RecordEntry, unknown>>;
  if (typeof zone !== 'string' || zone === '') return 'This line of the record names no zone';
  const atMs = typeof time === 'string' ? Date.parse(time) : NaN;
  if (Number.isNaN(atMs)) return `This line of the record has no time that can be read${shown(time)}`;
  const cause = causes.find((known) => known === found);
  if (!cause) return `This line of the record does not say which of the known causes was found${shown(found)}`;
  return {
    zone,
    machine: typeof machine === 'string' ? machine : null,
    time: new Date(atMs).toISOString(),
    found: cause,
    note: typeof note === 'string' ? note : '',
  };
}

/** ", but "gremlins"", short; nothing for what is not there. */
function shown(value: unknown): string {
  const text = value === undefined ? '' : JSON.stringify(value);
  return text === '' ? '' : `, but ${text.length > 40 ? `${text.slice(0, 39)}…` : text}`;
}

function badLine(place: Place, what: string): ProblemNote {
  return {
    code: 'bad-history',
    ...place,
    what: `${what}, so it was left out.`,
    todo: `Correct it in a text editor (found is one of ${causes.join(', ')}), or delete it.`,
  };
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line) as unknown;
  } catch {
    return null;
  }
}
