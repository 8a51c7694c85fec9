import { cellMark, type LogColumn, type LogFile } from './model/log-file.js';
import type { SourceNote } from './model/findings.js';
import type { ProblemNote } from './model/problem.js';
import { clockToUtc, LogClock, zoneOffset, type OffsetMinutes } from './normalise/clock.js';
import { HeldEntries } from './normalise/held-entries.js';
import { OrderNote } from './normalise/order-note.js';
import { LearntCodes } from './normalise/screen.js';
import { TagBlocks, type HoldRule } from './normalise/tag-blocks.js';
import { WideBlocks } from './normalise/wide-blocks.js';
import { ZonePourer, type SampleSink } from './normalise/zone-pourer.js';
import { groupFiles } from './normalise/file-groups.js';
import { readLong } from './read/long-reader.js';
import type { FeedOptions } from './read/row-feed.js';
import { RowTally, type RejectExample } from './read/row-tally.js';
import type { Survey } from './read/survey.js';
import { batchRows, readWide } from './read/wide-reader.js';

export type { SampleSink } from './normalise/zone-pourer.js';

export interface PourOptions extends FeedOptions {
  /** Called now and then with bytes read so far over all files. */
  readonly onProgress?: ((bytes: number) => void) | undefined;
}

export interface PourResult {
  /** One per temperature log. */
  readonly sources: readonly SourceNote[];
  readonly problems: readonly ProblemNote[];
  /** First and last sample, UTC ms; NaN when nothing was read. */
  readonly startMs: number;
  readonly endMs: number;
  /** By file name: the first rows left out. */
  readonly examples: ReadonlyMap<string, readonly RejectExample[]>;
  /** How lists of events of the same run are to be read: by the same clock and order of dates. */
  readonly eventOptions: { readonly toUtc: (clockMs: number) => number; readonly dates?: 'day-first' | 'month-first' };
  /** Samples poured by zone index. */
  readonly samples: readonly number[];
  /** End-of-scale numbers that are in no table and were learnt from the log itself. */
  readonly learntCodes: readonly number[];
  /** The same in sentences for the reader. */
  readonly assumptions: readonly string[];
}

/** Files out of time order are held in memory up to this many values (about 30 bytes each). */
export const mostHeldValues = 12_000_000;

/**
 * Reads all temperature logs of a survey once, from beginning to end, and hands every zone's samples to the sink in
 * strictly rising time, in °C, percent and UTC. Files over the same zones follow each other by their first time; files
 * that hold different columns of one zone are merged by time.
 *
 * @returns What was read and left out. Files that break off are problems, not errors.
 */
export async function pourSamples(found: Survey, sink: SampleSink, options: PourOptions = {}): Promise<PourResult> {
  const offset = found.timezone === null ? null : await zoneOffset(found.timezone);
  const logs = found.files.filter((file) => file.kind === 'temperature');
  const totalBytes = logs.reduce((sum, file) => sum + file.sizeBytes, 0);
  const { progress } = sink;
  const onProgress =
    options.onProgress ?? (progress && ((bytes: number) => progress(Math.min(bytes, totalBytes), totalBytes)));
  const run = new Pour(found, sink, offset, { ...options, onProgress });
  for (const group of groupFiles(logs)) {
    if (group.length === 1) await run.single(group[0]!);
    else await run.merged(group);
  }
  const toUtc = await clockToUtc(found.timezone);
  const dates = datesOf(found, logs);
  return { ...run.result(), eventOptions: dates === undefined ? { toUtc } : { toUtc, dates } };
}

/** Day or month first: as plant.yaml says, else as a temperature log has proved. */
function datesOf(found: Survey, logs: readonly LogFile[]): 'day-first' | 'month-first' | undefined {
  if (found.plant.dates) return found.plant.dates;
  const proved = logs.find(({ time }) => time.kind === 'date' && time.order !== 'ymd' && !time.isUndecided);
  return proved && (proved.time.order === 'dmy' ? 'day-first' : 'month-first');
}

interface FileRun {
  readonly file: LogFile;
  readonly tally: RowTally;
  readonly order: OrderNote;
  readonly problems: ProblemNote[];
  readonly clock: LogClock | null;
}

class Pour {
  private readonly learnt = new LearntCodes();
  private readonly pourers: readonly ZonePourer[];
  private readonly runs: FileRun[] = [];
  private bytesBefore = 0;

  constructor(
    found: Survey,
    sink: SampleSink,
    private readonly offset: OffsetMinutes | null,
    private readonly options: PourOptions,
  ) {
    this.pourers = found.zones.map((zone) => {
      const file = found.files.find((it) => readingOf(it, zone.index) !== undefined);
      const reading = file ? readingOf(file, zone.index)! : { unit: 'degC' as const, scale: 1 };
      return new ZonePourer(zone, reading, sink, this.learnt, file?.typicalDegC ?? NaN);
    });
  }

  async single(file: LogFile): Promise<void> {
    const run = this.start(file);
    if (file.layout === 'wide' && file.order === 'rising' && !file.isChangeLogged) await this.pourWide(run);
    else await this.pourEntries([run]);
    this.bytesBefore += file.sizeBytes;
  }

  async merged(files: readonly LogFile[]): Promise<void> {
    await this.pourEntries(files.map((file) => this.start(file)));
    for (const file of files) this.bytesBefore += file.sizeBytes;
  }

  private start(file: LogFile): FileRun {
    const clock = this.offset === null || file.time.isAbsolute ? null : new LogClock(this.offset);
    const run = { file, tally: new RowTally(), order: new OrderNote(), problems: [], clock };
    this.runs.push(run);
    return run;
  }

  private feedOptions(): FeedOptions {
    const { onProgress, isFast } = this.options;
    const before = this.bytesBefore;
    return {
      ...(isFast === undefined ? {} : { isFast }),
      onProgress: onProgress && ((bytes) => onProgress(before + bytes)),
    };
  }

  private async pourWide({ file, tally, order, problems, clock }: FileRun): Promise<void> {
    const blocks = new WideBlocks(file, this.pourers, clock, order, batchRows);
    for await (const batch of readWide(file, tally, problems, this.feedOptions())) blocks.take(batch);
  }

  private async pourEntries(runs: readonly FileRun[]): Promise<void> {
    const tags: LogColumn[] = [];
    const streams = runs.map((run) => {
      const first = tags.length;
      const own = run.file.layout === 'long' ? run.file.tags : run.file.columns;
      tags.push(...own);
      return this.entriesOf(run, first);
    });
    const blocks = new TagBlocks(tags, holdOf(runs), this.pourers, runs[0]!.order);
    if (streams.length === 1)
      for await (const batch of streams[0]!)
        batch.forEach((ms, tag, value, mark, line) => blocks.take(ms, tag, value, mark, line));
    else await mergeEntries(streams, blocks);
    blocks.finish();
  }

  /** Entries of one file in time order, tags numbered from `first`. */
  private async *entriesOf(run: FileRun, first: number): AsyncGenerator<Entries> {
    const toUtc = (clockMs: number): number => (run.clock === null ? clockMs : run.clock.toUtc(clockMs));
    const held = run.file.order === 'rising' ? null : new HeldEntries();
    for await (const batch of this.rawEntries(run)) {
      if (held) batch.forEach((ms, tag, value, mark, line) => this.hold(held, run, ms, tag + first, value, mark, line));
      else
        yield {
          forEach: (take) =>
            batch.forEach((ms, tag, value, mark, line) => take(toUtc(ms), tag + first, value, mark, line)),
        };
    }
    if (held)
      yield {
        forEach: (take) =>
          held.inOrder(run.file.order === 'falling', (ms, tag, value, mark, line) =>
            take(toUtc(ms), tag, value, mark, line),
          ),
      };
  }

  private hold(held: HeldEntries, run: FileRun, ...entry: Parameters<HeldEntries['add']>): void {
    if (held.length < mostHeldValues) return held.add(...entry);
    if (held.length === mostHeldValues) run.problems.push(tooLongToSort(run.file.name));
    run.order.older++;
  }

  private async *rawEntries({ file, tally, problems }: FileRun): AsyncGenerator<Entries> {
    if (file.layout === 'long') {
      for await (const batch of readLong(file, tally, problems, this.feedOptions()))
        yield {
          forEach: (take) => {
            for (let i = 0; i < batch.length; i++)
              take(batch.clockMs[i]!, batch.tag[i]!, batch.value[i]!, batch.mark[i]!, batch.line[i]!);
          },
        };
      return;
    }
    const used = file.columns.filter((column) => column.zones.length > 0);
    for await (const batch of readWide(file, tally, problems, this.feedOptions()))
      yield {
        forEach: (take) => {
          for (let i = 0; i < batch.length; i++)
            for (const { index } of used) {
              const value = batch.values[index]![i]!;
              const mark = batch.marks[index]?.[i] ?? cellMark.number;
              if (file.isChangeLogged && isUnchanged(value, mark)) continue;
              take(batch.clockMs[i]!, index, value, mark, batch.line[i]!);
            }
        },
      };
  }

  result(): Omit<PourResult, 'eventOptions'> {
    const poured = this.pourers.filter((pourer) => pourer.sampleCount > 0);
    return {
      sources: this.runs.map(toSource),
      problems: this.runs.flatMap(problemsOf),
      startMs: poured.reduce((ms, pourer) => (pourer.firstMs >= ms ? ms : pourer.firstMs), NaN),
      endMs: poured.reduce((ms, pourer) => (pourer.lastMs <= ms ? ms : pourer.lastMs), NaN),
      examples: new Map(this.runs.map((run) => [run.file.name, run.tally.examples])),
      samples: this.pourers.map((pourer) => pourer.sampleCount),
      learntCodes: [...this.learnt.counts.keys()],
      assumptions: [...this.learnt.counts.keys()].map(saidOfCode),
    };
  }
}

function saidOfCode(raw: number): string {
  return `${raw} is taken for a code and not for a temperature: readings jump to it faster than heat can move them, and then repeat it to the last digit.`;
}

/** A blank in a log of changes says that nothing changed; words for an open input are news. */
function isUnchanged(value: number, mark: number): boolean {
  return mark === cellMark.blank || (mark === cellMark.number && Number.isNaN(value));
}

type TakeEntry = (ms: number, tag: number, value: number, mark: number, line: number) => void;
interface Entries {
  forEach(take: TakeEntry): void;
}

function readingOf(file: LogFile, zone: number): LogColumn | undefined {
  return [...file.columns, ...file.tags].find((column) => column.role === 'reading' && column.zones.includes(zone));
}

function holdOf(runs: readonly FileRun[]): HoldRule | null {
  const changing = runs.filter(({ file }) => file.isChangeLogged);
  if (changing.length === 0) return null;
  return {
    stepMs: Math.min(...changing.map(({ file }) => file.samplingMs)),
    holdMs: Math.max(...changing.map(({ file }) => file.holdMs)),
  };
}

/** Merges streams that are each in time order: always the one whose next entry is earliest. */
async function mergeEntries(streams: readonly AsyncGenerator<Entries>[], blocks: TagBlocks): Promise<void> {
  const queues = streams.map((stream) => ({ stream, entries: [] as number[][], at: 0, isDone: false }));
  const refill = async (queue: (typeof queues)[number]): Promise<void> => {
    while (!queue.isDone && queue.at === queue.entries.length) {
      const next = await queue.stream.next();
      queue.at = 0;
      queue.entries = [];
      if (next.done) queue.isDone = true;
      else next.value.forEach((...entry) => queue.entries.push(entry));
    }
  };
  for (const queue of queues) await refill(queue);
  for (;;) {
    let first: (typeof queues)[number] | null = null;
    for (const queue of queues)
      if (
        queue.at < queue.entries.length &&
        (first === null || queue.entries[queue.at]![0]! < first.entries[first.at]![0]!)
      )
        first = queue;
    if (first === null) return;
    const [ms, tag, value, mark, line] = first.entries[first.at++]!;
    blocks.take(ms!, tag!, value!, mark!, line!);
    if (first.at === first.entries.length) await refill(first);
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

function toSource({ file, tally, order }: FileRun): SourceNote {
  const rejected: Record<string, number> = Object.fromEntries(tally.byReason);
  if (order.repeated > 0) rejected['repeated'] = order.repeated;
  if (order.older > 0) rejected['older'] = order.older;
  return {
    ...{ file: file.name, kind: 'temperature', layout: file.layoutText, rowsRead: tally.rowsRead },
    ...{
      rowsRejected: tally.rowsRejected + order.repeated + order.older,
      rejectedByReason: rejected,
      notes: file.notes,
    },
  };
}

function problemsOf({ file, tally, order, problems, clock }: FileRun): ProblemNote[] {
  const all = [...problems, ...tally.toProblems(file.name), ...order.toProblems(file.name)];
  if (clock && clock.missingHourRows > 0)
    all.push({
      ...{ code: 'clock-jump', file: file.name, count: clock.missingHourRows },
      what: `${clock.missingHourRows} rows stand in the hour that the clock leaves out in spring: the logger does not follow summer time.`,
      todo: 'Say a time zone without summer time (such as Etc/GMT-1) in plant.yaml, or correct the logger.',
    });
  return all;
}
