import { readFile } from 'node:fs/promises';
import type { Findings } from '../model/findings.js';
import { isFindings } from '../model/findings-shape.js';
import { LogProblem } from '../model/problem.js';
import type { AnalyseOptions } from '../pipeline.js';

/** Findings from logs, or those of an earlier run where one .json file is all that is named: no log is one. */
export async function readOrAnalyse(paths: readonly string[], options: AnalyseOptions): Promise<Findings> {
  const [only] = paths;
  if (paths.length === 1 && only?.toLowerCase().endsWith('.json')) return readFindings(only);
  const { analyse } = await import('../pipeline.js');
  return analyse([...paths], options);
}

/**
 * Reads findings that an earlier run has written.
 *
 * @throws LogProblem when the file cannot be read or holds something else.
 */
export async function readFindings(file: string): Promise<Findings> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (cause) {
    const isMissing = (cause as { code?: string }).code === 'ENOENT';
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new LogProblem(
      'unreadable-file',
      { file },
      isMissing ? 'There is no such file.' : `It could not be read (${why}).`,
      'Name the findings that "looselead report" has written.',
      { cause },
    );
  }
  const value = parsed(text);
  if (!isFindings(value)) {
    throw new LogProblem(
      'unreadable-file',
      { file },
      'It holds no findings of schema 1.',
      'Name the findings that "looselead report" has written.',
    );
  }
  return value;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
