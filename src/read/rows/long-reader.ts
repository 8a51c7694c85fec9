import type { LogColumn, LogFile, TagBatch } from '../../model/log-file.js';
import { cellMark } from '../../model/log-file.js';
import type { ProblemNote } from '../../model/problem.js';
import { flagOfNumber } from './flag-cell.js';
import { LongRun } from './long-run.js';
import { feedRows, type FeedOptions } from './row-feed.js';
import { RowScanner } from './row-scanner.js';
import type { RowTally } from './row-tally.js';

const batchEntries = 8192;

type TagRole = Pick<LogColumn, 'role' | 'above'>;

/**
 * Reads a long file as batches of entries: time, tag, value. Rows of tags that no zone uses are passed over; rows of tags
 * that the survey did not see are counted as left out. The batch is used again for the next one.
 */
export async function* readLong(
  file: LogFile,
  tally: RowTally,
  problems: ProblemNote[],
  options: FeedOptions = {},
): AsyncGenerator<TagBatch> {
  const valueColumns = file.columns.filter((column) => column.role === 'value').map((column) => column.index);
  const batch = emptyBatch(batchEntries + valueColumns.length);
  const scanner = new RowScanner(file, 1);
  // Of one shape each: the tags themselves are made in several places, and the engine takes the long way to read those.
  const roles = file.tags.map(({ role, above }): TagRole => ({ role, above }));
  for (const name of tagTexts(file, valueColumns.length)) scanner.addTag(name);
  const takeRow = (line: number): number => {
    if (scanner.tag < 0) leaveOut(scanner, tally, line);
    else
      for (let k = 0; k < valueColumns.length; k++)
        addEntry(batch, scanner, roles, valueColumns[k]!, scanner.tag * valueColumns.length + k, line);
    scanner.store.clearMarks();
    return 0;
  };
  const isFull = (): boolean => batch.length >= batchEntries;
  const parts = scanner.runParts();
  const run = parts && new LongRun(file, parts, batch, batchEntries);
  const taker = { batch, takeRow, isFull, ...(run && { run }) };
  for await (const full of feedRows(taker, file, scanner, tally, problems, options)) {
    yield full;
    full.length = 0;
  }
  if (batch.length > 0) yield batch;
}

/** A batch with room for so many entries. */
export function emptyBatch(capacity: number): TagBatch {
  return {
    length: 0,
    clockMs: new Float64Array(capacity),
    tag: new Int32Array(capacity),
    value: new Float64Array(capacity),
    mark: new Uint8Array(capacity),
    line: new Float64Array(capacity),
  };
}

/** Texts of the tag column, in order of their numbers; with several value columns each has that many tags. */
function tagTexts(file: LogFile, columnsPerTag: number): string[] {
  return file.tags.filter((_, i) => i % columnsPerTag === 0).map((tag) => tag.text ?? tag.name);
}

function leaveOut(scanner: RowScanner, tally: RowTally, line: number): void {
  tally.rowsRead--;
  tally.reject(line, scanner.tag === -2 ? 'no-tag' : 'unknown-tag', scanner.tag === -2 ? '' : scanner.unknownTag());
}

function addEntry(
  batch: TagBatch,
  scanner: RowScanner,
  roles: readonly TagRole[],
  column: number,
  number: number,
  line: number,
): void {
  const tag = roles[number]!;
  if (tag.role === 'ignored') return;
  const at = batch.length++;
  const value = scanner.store.values[column]![0]!;
  const mark = scanner.store.marks[column]?.[0] ?? 0;
  batch.clockMs[at] = scanner.clockMs;
  batch.tag[at] = number;
  batch.value[at] = stateOf(tag, value, mark, scanner);
  batch.mark[at] = scanner.quality.isRowBad ? markOfBad(mark) : mark;
  batch.line[at] = line;
}

/** A bad quality speaks for an empty cell, too: many recorders write no number beside "Bad: sensor failure". */
function markOfBad(mark: number): number {
  return mark === cellMark.number || mark === cellMark.blank ? cellMark.badQuality : mark;
}

/** What a tag that is no number says as one. */
function stateOf({ role, above }: TagRole, value: number, mark: number, scanner: RowScanner): number {
  if (role !== 'running' && role !== 'alarm') return value;
  if (mark !== cellMark.number) return role === 'running' ? scanner.store.runningOfText : scanner.store.flagOfText;
  if (role === 'alarm') return flagOfNumber(value);
  return value > above ? 1 : 0;
}
