import type { AlarmList } from '../model/alarm-list.js';
import type { LogColumn, LogFile } from '../model/log-file.js';
import type { SourceNote } from '../model/findings.js';
import type { ProblemNote } from '../model/problem.js';
import type { Zone } from '../model/zone.js';
import { clockToUtc, LogClock, LoggerHabit, zoneOffset, type OffsetMinutes } from '../normalise/clock.js';
import { AlarmFlags } from '../normalise/events/alarm-flags.js';
import { OrderNote } from '../normalise/order-note.js';
import { LearntCodes } from '../normalise/screen.js';
import { TagBlocks, type HoldRule } from '../normalise/tag-blocks.js';
import { WideBlocks } from '../normalise/wide-blocks.js';
import { ZonePourer, type SampleSink } from '../normalise/zone-pourer.js';
import { groupFiles } from '../normalise/file-groups.js';
import type { FeedOptions } from '../read/rows/row-feed.js';
import { RowTally, type RejectExample } from '../read/rows/row-tally.js';
import type { Survey } from '../read/survey/survey.js';
import { batchRows, readWide } from '../read/rows/wide-reader.js';
import { entriesOf, mergeEntries, tagsOf } from './entries.js';
import { problemsOf, toSource, type FileRun } from './file-run.js';

export type { SampleSink } from '../normalise/zone-pourer.js';

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
  /** The zones of the survey, each said to have only what a number was seen of. */
  readonly zones: readonly Zone[];
  /** Alarms of flags that stand beside readings, by start; on the clock of the temperature logs. */
  readonly flagAlarms: AlarmList;
  /** End-of-scale numbers that are in no table and were learnt from the log itself. */
  readonly learntCodes: readonly number[];
  /** The same in sentences for the reader. */
  readonly assumptions: readonly string[];
}

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

class Pour {
  private readonly learnt = new LearntCodes();
  private readonly flags: AlarmFlags;
  private readonly pourers: readonly ZonePourer[];
  private readonly runs: FileRun[] = [];
  private readonly habits = new Map<string, LoggerHabit>();
  private readonly timezone: string | null;
  private bytesBefore = 0;

  constructor(
    found: Survey,
    sink: SampleSink,
    private readonly offset: OffsetMinutes | null,
    private readonly options: PourOptions,
  ) {
    this.timezone = found.timezone;
    this.flags = new AlarmFlags(found.zones);
    const readings = firstReadings(found.files);
    this.pourers = found.zones.map((zone) => {
      const { column, typicalDegC } = readings.get(zone.index) ?? noReading;
      return new ZonePourer(zone, column, sink, this.learnt, typicalDegC);
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
    const hasClock = this.offset !== null && !file.time.isAbsolute;
    const clock = hasClock ? new LogClock(this.offset!, this.habitOf(file)) : null;
    const order = new OrderNote(hasClock ? this.timezone : null);
    const run = { file, tally: new RowTally(), order, problems: [], clock };
    this.runs.push(run);
    return run;
  }

  /** Files of the same zones come from one logger. */
  private habitOf(file: LogFile): LoggerHabit {
    const zones = new Set([...file.columns, ...file.tags].flatMap((column) => column.zones));
    const key = [...zones].sort((a, b) => a - b).join();
    const habit = this.habits.get(key) ?? new LoggerHabit();
    this.habits.set(key, habit);
    return habit;
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
    const blocks = new WideBlocks(file, this.pourers, clock, order, batchRows, this.flags);
    for await (const batch of readWide(file, tally, problems, this.feedOptions())) blocks.take(batch);
  }

  private async pourEntries(runs: readonly FileRun[]): Promise<void> {
    const tags: LogColumn[] = [];
    const isChangeLogged: boolean[] = [];
    const orders: OrderNote[] = [];
    const streams = runs.map((run) => {
      const firstTag = tags.length;
      const own = tagsOf(run.file);
      tags.push(...own);
      isChangeLogged.push(...own.map(() => run.file.isChangeLogged));
      orders.push(...own.map(() => run.order));
      return entriesOf(run, firstTag, this.feedOptions());
    });
    const blocks = new TagBlocks(tags, holdOf(runs, isChangeLogged), this.pourers, orders, this.flags);
    if (streams.length === 1) for await (const batch of streams[0]!) blocks.take(batch, 0, batch.length);
    else await mergeEntries(streams, blocks);
    blocks.finish();
  }

  result(): Omit<PourResult, 'eventOptions'> {
    const poured = this.pourers.filter((pourer) => pourer.sampleCount > 0);
    const endMs = poured.reduce((ms, pourer) => (pourer.lastMs <= ms ? ms : pourer.lastMs), NaN);
    return {
      sources: this.runs.map(toSource),
      problems: this.runs.flatMap(problemsOf),
      startMs: poured.reduce((ms, pourer) => (pourer.firstMs >= ms ? ms : pourer.firstMs), NaN),
      endMs,
      examples: new Map(this.runs.map((run) => [run.file.name, run.tally.examples])),
      zones: this.pourers.map(({ zone, seen }) => ({ ...zone, has: { ...zone.has, ...seen } })),
      learntCodes: [...this.learnt.counts.keys()],
      flagAlarms: this.flags.alarms(endMs),
      assumptions: [...[...this.learnt.counts.keys()].map(saidOfCode), ...this.flags.assumptions(endMs)],
    };
  }
}

function saidOfCode(raw: number): string {
  return `${raw} is taken for a code and not for a temperature: readings jump to it faster than heat can move them, and then repeat it to the last digit.`;
}

interface FirstReading {
  readonly column: Pick<LogColumn, 'unit' | 'scale'>;
  readonly typicalDegC: number;
}

const noReading: FirstReading = { column: { unit: 'degC', scale: 1 }, typicalDegC: NaN };

/** By zone index: its reading in the first file that holds one. */
function firstReadings(files: readonly LogFile[]): ReadonlyMap<number, FirstReading> {
  const first = new Map<number, FirstReading>();
  for (const { columns, tags, typicalDegC } of files)
    for (const column of [...columns, ...tags].filter(({ role }) => role === 'reading'))
      for (const zone of column.zones) if (!first.has(zone)) first.set(zone, { column, typicalDegC });
  return first;
}

function holdOf(runs: readonly FileRun[], isChangeLogged: readonly boolean[]): HoldRule | null {
  const changing = runs.filter(({ file }) => file.isChangeLogged);
  if (changing.length === 0) return null;
  return {
    stepMs: Math.min(...changing.map(({ file }) => file.samplingMs)),
    holdMs: Math.max(...changing.map(({ file }) => file.holdMs)),
    silenceMs: Math.max(...changing.map(({ file }) => file.silenceMs)),
    isChangeLogged,
  };
}
