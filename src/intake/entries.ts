import { cellMark, type LogColumn, type LogFile, type TagBatch } from '../model/log-file.js';
import type { ProblemNote } from '../model/problem.js';
import { HeldEntries } from '../normalise/held-entries.js';
import type { TagBlocks } from '../normalise/tag-blocks.js';
import { emptyBatch, readLong } from '../read/rows/long-reader.js';
import type { FeedOptions } from '../read/rows/row-feed.js';
import { readWide } from '../read/rows/wide-reader.js';
import { EarliestFirst } from './earliest-first.js';
import type { FileRun } from './file-run.js';

/** Files out of time order are held in memory up to this many values (about 30 bytes each). */
export const mostHeldValues = 12_000_000;

const batchEntries = 8192;

/**
 * Entries of one file in time order, in UTC, tags numbered from `firstTag`. The batch is used again: take what you need
 * before asking for the next.
 */
export async function* entriesOf(run: FileRun, firstTag: number, options: FeedOptions): AsyncGenerator<TagBatch> {
  const { file, tally, problems, clock } = run;
  const read = file.layout === 'long' ? readLong(file, tally, problems, options) : wideEntries(run, options);
  for await (const batch of file.order === 'rising' ? read : sortedEntries(run, read)) {
    const { length, clockMs, tag } = batch;
    if (clock !== null && file.order === 'rising')
      for (let i = 0; i < length; i++) clockMs[i] = clock.toUtc(clockMs[i]!);
    if (firstTag > 0) for (let i = 0; i < length; i++) tag[i] = tag[i]! + firstTag;
    yield batch;
  }
}

/** The cells of a wide file as entries, row by row; a column is a tag. */
async function* wideEntries({ file, tally, problems }: FileRun, options: FeedOptions): AsyncGenerator<TagBatch> {
  const used = file.columns.filter((column) => column.zones.length > 0);
  const entries = emptyBatch(batchEntries + used.length);
  for await (const { length, clockMs, values, marks, line } of readWide(file, tally, problems, options))
    for (let row = 0; row < length; row++) {
      for (const { index } of used) {
        const value = values[index]![row]!;
        const mark = marks[index]?.[row] ?? cellMark.number;
        if (file.isChangeLogged && isUnchanged(value, mark)) continue;
        const at = entries.length++;
        entries.clockMs[at] = clockMs[row]!;
        entries.tag[at] = index;
        entries.value[at] = value;
        entries.mark[at] = mark;
        entries.line[at] = line[row]!;
      }
      if (entries.length < batchEntries) continue;
      yield entries;
      entries.length = 0;
    }
  if (entries.length > 0) yield entries;
}

/** A blank in a log of changes says that nothing changed; words for an open input are news. */
function isUnchanged(value: number, mark: number): boolean {
  return mark === cellMark.blank || (mark === cellMark.number && Number.isNaN(value));
}

/** The same entries by time, in UTC; all of them must be held, up to a limit. */
async function* sortedEntries(run: FileRun, batches: AsyncIterable<TagBatch>): AsyncGenerator<TagBatch> {
  const held = new HeldEntries();
  let leftOut = 0;
  for await (const batch of batches) leftOut += batch.length - held.add(batch, mostHeldValues - held.length);
  if (leftOut > 0) run.problems.push(tooLongToSort(run.file.name));
  run.order.older += leftOut;
  const sorted = emptyBatch(batchEntries);
  const places = held.inOrder(run.file.order, (clockMs) => run.clock?.toUtc(clockMs) ?? clockMs);
  for (let from = 0; from < places.length; from += batchEntries) {
    held.copy(places.subarray(from, from + batchEntries), sorted);
    yield sorted;
  }
}

function tooLongToSort(file: string): ProblemNote {
  return {
    ...{
      code: 'too-large',
      file,
      what: `The rows are not in time order and more than ${mostHeldValues} values would have to be held to sort them.`,
    },
    todo: 'Export the log sorted by time; the rest was left out.',
  };
}

/** Tags of several files one behind the other, as {@link entriesOf} numbers them. */
export function tagsOf(file: LogFile): readonly LogColumn[] {
  return file.layout === 'long' ? file.tags : file.columns;
}

interface Queue {
  readonly place: number;
  readonly stream: AsyncGenerator<TagBatch>;
  batch: TagBatch;
  at: number;
  /** Time of the entry that comes next. */
  atMs: number;
}

/** Merges streams that are each in time order: always the one whose next entry is earliest, the first of equal ones. */
export async function mergeEntries(streams: readonly AsyncGenerator<TagBatch>[], blocks: TagBlocks): Promise<void> {
  const queues = new EarliestFirst<Queue>();
  for (const [place, stream] of streams.entries()) {
    const batch = await nextBatch(stream);
    if (batch) queues.add({ place, stream, batch, at: 0, atMs: batch.clockMs[0]! });
  }
  for (let queue = queues.first; queue; queue = queues.first) {
    blocks.take(queue.batch, queue.at, queue.at + 1);
    if (++queue.at === queue.batch.length) {
      const batch = await nextBatch(queue.stream);
      if (!batch) {
        queues.removeFirst();
        continue;
      }
      queue.batch = batch;
      queue.at = 0;
    }
    queue.atMs = queue.batch.clockMs[queue.at]!;
    queues.settleFirst();
  }
}

async function nextBatch(stream: AsyncGenerator<TagBatch>): Promise<TagBatch | null> {
  for (;;) {
    const next = await stream.next();
    if (next.done) return null;
    if (next.value.length > 0) return next.value;
  }
}
