import { extname } from 'node:path';
import type { LogFile } from '../../model/log-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import { reasonOf } from '../../model/reason-of.js';
import { tableParts } from './table-source.js';
import type { TextRef } from './text-source.js';
import { listZip } from './zip-source.js';

/** The texts and tables in a file: itself, the entries of an archive, the sheets of a workbook. Never throws for bad input. */
export async function* partsOf(path: string, problems: ProblemNote[]): AsyncGenerator<TextRef> {
  const container = containerOf(path);
  try {
    if (container === 'zip') yield* zipParts(path, problems);
    else if (container === 'workbook') yield* await tableParts(path);
    else yield { name: path, path, part: null, container };
  } catch (error) {
    if (error instanceof LogProblem) problems.push(error.toNote());
    else
      problems.push({
        code: 'unreadable-file',
        file: path,
        what: `The file is damaged (${reasonOf(error)}).`,
        todo: 'Copy or export it again; it was left out.',
      });
  }
}

function containerOf(path: string): LogFile['container'] {
  const extension = extname(path).toLowerCase();
  if (extension === '.gz') return 'gzip';
  if (extension === '.zip') return 'zip';
  if (extension === '.xlsx' || extension === '.xlsm') return 'workbook';
  return extension === '.parquet' ? 'parquet' : 'text';
}

async function* zipParts(path: string, problems: ProblemNote[]): AsyncGenerator<TextRef> {
  for (const entry of await listZip(path)) {
    if (/(^|[\\/])(__MACOSX|\.)/.test(entry.name) && !/(^|[\\/])\.\.([\\/]|$)/.test(entry.name)) continue;
    if (/(^|[\\/])\.\.([\\/]|$)|^([\\/]|[a-z]:)/i.test(entry.name))
      problems.push({
        ...{
          code: 'archive-entry',
          file: path,
          what: `The entry "${entry.name}" would leave its folder when unpacked.`,
        },
        todo: 'It is read in place and nothing is written, but ask where the archive comes from.',
      });
    if (/\.(zip|gz|xlsx|parquet)$/i.test(entry.name))
      problems.push({
        ...{ code: 'archive-entry', file: path, what: `The entry "${entry.name}" is itself an archive or workbook.` },
        todo: 'Unpack it first; it was left out.',
      });
    else yield { name: `${path}!${entry.name}`, path, part: entry.name, container: 'zip' };
  }
}
