import type { LogColumn, LogFile, WideBatch } from '../model/log-file.js';
import type { LogClock } from './clock.js';
import type { AlarmFlag, AlarmFlags } from './events/alarm-flags.js';
import { allToDegC, allToPercent } from './degrees.js';
import type { OrderNote } from './order-note.js';
import type { ZonePourer, ZoneRows } from './zone-pourer.js';

interface ZoneColumns {
  readonly pourer: ZonePourer;
  readonly reading: LogColumn;
  readonly setpoint: LogColumn | undefined;
  readonly output: LogColumn | undefined;
  readonly running: LogColumn | undefined;
}

function columnsByZone(file: LogFile): Map<number, LogColumn[]> {
  const byZone = new Map<number, LogColumn[]>();
  for (const column of file.columns)
    for (const zone of column.zones) {
      const columns = byZone.get(zone);
      if (columns) columns.push(column);
      else byZone.set(zone, [column]);
    }
  return byZone;
}

/** Turns the batches of one wide file into blocks, without copying a column where the times are in order. */
export class WideBlocks {
  private readonly zones: readonly ZoneColumns[];
  private readonly flags: readonly { readonly index: number; readonly flag: AlarmFlag }[];
  private readonly timeMs: Float64Array;
  private readonly unknown: Float64Array;
  private lastClockMs = NaN;

  constructor(
    file: LogFile,
    pourers: readonly ZonePourer[],
    private readonly clock: LogClock | null,
    private readonly order: OrderNote,
    batchRows: number,
    flags: AlarmFlags,
  ) {
    const columns = columnsByZone(file);
    const find = (zone: number, role: LogColumn['role']) => columns.get(zone)?.find((column) => column.role === role);
    this.zones = pourers.flatMap((pourer) => {
      const reading = find(pourer.zone.index, 'reading');
      const rest = (role: LogColumn['role']) => find(pourer.zone.index, role);
      return reading
        ? [{ pourer, reading, setpoint: rest('setpoint'), output: rest('output'), running: rest('running') }]
        : [];
    });
    this.flags = file.columns.flatMap((column) => {
      const flag = flags.of(column);
      return flag ? [{ index: column.index, flag }] : [];
    });
    this.timeMs = new Float64Array(batchRows);
    this.unknown = new Float64Array(batchRows).fill(NaN);
  }

  /** Takes a batch and pours it; changes the batch's arrays. */
  take(batch: WideBatch): void {
    if (this.zones.length + this.flags.length === 0) return; // nothing is poured, so nothing can be repeated
    const isRising = this.readTimes(batch);
    const kept = isRising && !(this.timeMs[0]! <= this.earliestLast()) ? batch : this.sorted(batch);
    if (kept.length === 0) return;
    this.takeFlags(kept);
    this.scale(kept);
    for (const zone of this.zones) zone.pourer.pour(this.rowsOf(zone, kept));
  }

  /** UTC of every row into timeMs; true when they rise strictly. */
  private readTimes({ length, clockMs, line }: WideBatch): boolean {
    const { timeMs, clock } = this;
    let isRising = true;
    let lastMs = -Infinity;
    for (let i = 0; i < length; i++) {
      const shown = clockMs[i]!;
      const ms = clock === null ? shown : clock.toUtc(shown);
      timeMs[i] = ms;
      if (ms <= lastMs) isRising = false;
      if (ms < lastMs || (i === 0 && ms < this.lastClockMs))
        this.order.back(line[i]!, i === 0 ? this.lastClockMs : lastMs, ms);
      lastMs = ms;
    }
    if (length > 0) this.lastClockMs = lastMs;
    return isRising;
  }

  /** Rows up to this time have been poured for every zone of the file. */
  private earliestLast(): number {
    if (this.zones.length === 0) return -Infinity;
    let earliest = Infinity;
    for (const { pourer } of this.zones)
      earliest = Math.min(earliest, Number.isNaN(pourer.lastMs) ? -Infinity : pourer.lastMs);
    return earliest;
  }

  /** The batch in time order, the first of equal times kept, rows already poured left out and counted. */
  private sorted(batch: WideBatch): WideBatch {
    const { timeMs } = this;
    const earliest = this.earliestLast();
    const places = Array.from({ length: batch.length }, (_, i) => i).sort((a, b) => timeMs[a]! - timeMs[b]! || a - b);
    const kept: number[] = [];
    const first = this.zones.map(({ reading }) => batch.values[reading.index]).find((values) => values);
    const isOther = (a: number, b: number): boolean => !!first && first[a]! - first[b]! !== 0;
    for (const place of places) {
      if (timeMs[place]! <= earliest) this.order.repeated++;
      else if (kept.length > 0 && timeMs[kept.at(-1)!] === timeMs[place]) {
        this.order.repeated++;
        if (isOther(kept.at(-1)!, place)) this.order.otherValues++;
      } else kept.push(place);
    }
    const pick = <T extends Float64Array | Uint8Array>(values: T): T => {
      const picked = values.slice();
      kept.forEach((place, i) => (picked[i] = values[place]!));
      return picked as T;
    };
    this.timeMs.set(pick(timeMs));
    const values = batch.values.map((column) => column && pick(column));
    const marks = batch.marks.map((column) => column && pick(column));
    return { ...batch, length: kept.length, values, marks };
  }

  private takeFlags({ length, values }: WideBatch): void {
    for (const { index, flag } of this.flags) {
      const states = values[index]!;
      for (let i = 0; i < length; i++) flag.take(this.timeMs[i]!, states[i]!);
    }
  }

  private scale({ length, values }: WideBatch): void {
    const done = new Set<LogColumn>();
    const once = (column: LogColumn | undefined, change: (values: Float64Array) => void): void => {
      const array = column && values[column.index];
      if (!array || done.has(column)) return;
      done.add(column);
      change(array);
    };
    for (const { reading, setpoint, output } of this.zones) {
      once(reading, (array) => allToDegC(array, length, reading));
      once(setpoint, (array) => allToDegC(array, length, setpoint!));
      once(output, (array) => allToPercent(array, length, output!));
    }
  }

  private rowsOf({ reading, setpoint, output, running }: ZoneColumns, batch: WideBatch): ZoneRows {
    const { length, values, marks, hasMarks } = batch;
    const column = (of: LogColumn | undefined): Float64Array => (of && values[of.index]) ?? this.unknown;
    return {
      length,
      timeMs: this.timeMs,
      readingDegC: column(reading),
      marks: (hasMarks && marks[reading.index]) || null,
      setpointDegC: column(setpoint),
      outputPercent: column(output),
      running: column(running),
    };
  }
}
