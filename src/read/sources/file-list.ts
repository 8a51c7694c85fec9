import { readdir, realpath } from 'node:fs/promises';
import { extname, join } from 'node:path';
import type { ProblemNote } from '../../model/problem.js';
import { LogProblem } from '../../model/problem.js';
import { statOf } from './byte-source.js';

export interface FoundFiles {
  /** Every file once, in the order of the paths given, folders by name. */
  readonly files: readonly string[];
  /** plant.yaml files met in the folders. */
  readonly plantFiles: readonly string[];
  readonly problems: readonly ProblemNote[];
}

/** Deeper than any export tree (common practice). */
const deepest = 20;
const mostFiles = 50_000;

/**
 * Lists the files under some paths. A folder is walked once even where links lead in a circle; hidden files and folders
 * are left out. A path that does not exist becomes a problem, not an error.
 */
export async function listFiles(paths: readonly string[]): Promise<FoundFiles> {
  const found = { files: [] as string[], plantFiles: [] as string[], problems: [] as ProblemNote[] };
  const seen = new Set<string>();
  for (const path of paths) await visit(path, 0, true, seen, found);
  return found;
}

type Found = { files: string[]; plantFiles: string[]; problems: ProblemNote[] };

async function visit(path: string, depth: number, isGiven: boolean, seen: Set<string>, found: Found): Promise<void> {
  try {
    const real = await realOf(path);
    if (seen.has(real)) return;
    seen.add(real);
    const about = await statOf(path);
    if (about.isDirectory()) return await visitFolder(path, depth, seen, found);
    if (!about.isFile()) return skipOddFile(path, found);
    if (/^plant\.ya?ml$/i.test(path.split(/[\\/]/).at(-1)!)) found.plantFiles.push(path);
    else if (isGiven || !isNoLog(path)) found.files.push(path);
  } catch (error) {
    found.problems.push(error instanceof LogProblem ? error.toNote() : unreadableNote(path));
  }
}

async function realOf(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if ((error as { code?: string }).code !== 'ELOOP') await statOf(path); // says what is wrong with it
    throw new LogProblem(
      'unreadable-file',
      { file: path },
      'The link leads in a circle.',
      'Remove the link or give the real path.',
      { cause: error },
    );
  }
}

async function visitFolder(path: string, depth: number, seen: Set<string>, found: Found): Promise<void> {
  if (depth > deepest || found.files.length >= mostFiles) {
    const what =
      depth > deepest
        ? `The folder lies more than ${deepest} levels deep.`
        : `More than ${mostFiles} files were found.`;
    found.problems.push({ code: 'too-large', file: path, what, todo: 'It was left out; give its path by itself.' });
    return;
  }
  const names = (await readdir(path))
    .filter((name) => !name.startsWith('.'))
    .sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  for (const name of names) await visit(join(path, name), depth + 1, false, seen, found);
}

/** Pages and pictures lie beside logs, and what this program writes itself must not be read as a log again. */
function isNoLog(path: string): boolean {
  return (
    /(^|[\\/])(findings|result)\.json$/i.test(path) ||
    ['.md', '.html', '.htm', '.svg', '.png', '.jpg', '.jpeg', '.pdf', '.doc', '.docx'].includes(
      extname(path).toLowerCase(),
    )
  );
}

function skipOddFile(path: string, found: Found): void {
  found.problems.push({
    ...{ code: 'unreadable-file', file: path, what: 'This is neither a file nor a folder (a pipe or a device).' },
    todo: 'Save what it gives as a file first.',
  });
}

function unreadableNote(path: string): ProblemNote {
  return { code: 'unreadable-file', file: path, what: 'The folder cannot be read.', todo: 'Check its permissions.' };
}
