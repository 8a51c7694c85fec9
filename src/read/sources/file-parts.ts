import { extname } from 'node:path';
import type { LogFile } from '../../model/log-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import { reasonOf } from '../../model/reason-of.js';
import { openHandle } from './byte-source.js';
import { tableParts } from './table-source.js';
import type { TextRef } from './text-source.js';
import { listZip } from './zip-source.js';

/** The texts and tables in a file: itself, the entries of an archive, the sheets of a workbook. Never throws for bad input. */
export async function* partsOf(path: string, problems: ProblemNote[]): AsyncGenerator<TextRef> {
  try {
    const container = await containerOf(path);
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

/** By its first bytes, for names are given away from; by its name where these say nothing. */
async function containerOf(path: string): Promise<LogFile['container']> {
  const extension = extname(path).toLowerCase();
  const isWorkbook = extension === '.xlsx' || extension === '.xlsm';
  const start = await startOf(path);
  if (start.startsWith('1f8b')) return 'gzip';
  if (start.startsWith(hexOf('PAR1'))) return 'parquet';
  if (start.startsWith('d0cf11e0')) throw olderWorkbook(path);
  if (start.startsWith(hexOf('PK')) && !isWorkbook)
    return (await listZip(path)).some(({ name }) => name === 'xl/workbook.xml') ? 'workbook' : 'zip';
  if (isWorkbook) return 'workbook';
  if (extension === '.zip') return 'zip';
  return extension === '.parquet' ? 'parquet' : 'text';
}

function hexOf(text: string): string {
  return Buffer.from(text).toString('hex');
}

/** The first four bytes, in which packed files say what they are (RFC 1952, Parquet format, ZIP application note). */
async function startOf(path: string): Promise<string> {
  const file = await openHandle(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(4), 0, 4, 0);
    return buffer.subarray(0, bytesRead).toString('hex');
  } finally {
    await file.close();
  }
}

/** Compound files (MS-CFB), as spreadsheets before 2007 wrote them. */
function olderWorkbook(path: string): LogProblem {
  return new LogProblem(
    'binary-file',
    { file: path },
    'This is a workbook in the older format (.xls).',
    'Save it as .xlsx or as CSV; it was left out.',
  );
}

async function* zipParts(path: string, problems: ProblemNote[]): AsyncGenerator<TextRef> {
  const entries = await listZip(path);
  if (entries.length === 0) problems.push(withoutEntries(path));
  for (const entry of entries) {
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

function withoutEntries(file: string): ProblemNote {
  return {
    ...{ code: 'empty-file', file, what: 'No file was found in the archive.' },
    todo: 'Check the export; the rest is read.',
  };
}
