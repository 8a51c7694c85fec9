import type { LogColumn, TagBatch } from '../model/log-file.js';
import type { AlarmFlag, AlarmFlags } from './events/alarm-flags.js';
import type { OrderNote } from './order-note.js';
import { toDegC } from './degrees.js';
import type { ZonePourer } from './zone-pourer.js';

const blockRows = 1024;
/** A set point or a running state stands until it is changed, but not longer than this without a word (common practice). */
const longestStandMs = 24 * 3_600_000;
/** In a log that writes changes only it has no word to say: set points are left alone for weeks (common practice). */
const longestStandOfChangesMs = 31 * 24 * 3_600_000;

/** What change logs hold their readings for; null for logs that write every value at every step. */
export interface HoldRule {
  readonly stepMs: number;
  /** A reading stands so long at most. */
  readonly holdMs: number;
  /** Nothing stands when no tag of the change logs was written for so long. */
  readonly silenceMs: number;
  /** By tag: whether its file writes changes only. */
  readonly isChangeLogged: readonly boolean[];
}

/** Rows of one zone on their way into a block. */
class ZoneRowsBuffer {
  length = 0;
  readonly timeMs = new Float64Array(blockRows);
  readonly readingDegC = new Float64Array(blockRows);
  readonly marks = new Uint8Array(blockRows);
  readonly setpointDegC = new Float64Array(blockRows);
  readonly outputPercent = new Float64Array(blockRows);
  readonly running = new Float64Array(blockRows);

  constructor(readonly pourer: ZonePourer) {}

  pour(): void {
    if (this.length > 0) this.pourer.pour(this);
    this.length = 0;
  }
}

/** What is known of a zone, each with a place of its own: the last reading, set point, output and running state. */
const parts = ['reading', 'setpoint', 'output', 'running'] as const;
const partCount = parts.length;
const [setpointPart, outputPart, runningPart] = [1, 2, 3];

/**
 * Turns entries (time, tag, value) in time order into samples of zones. All entries of one time make one sample per zone;
 * set points and outputs stand until the next. In a change log readings are held on a grid as long as the log lives, up to
 * a limit: a log that writes other values says that this one has not changed.
 */
export class TagBlocks {
  private readonly buffers: readonly ZoneRowsBuffer[];
  /** By tag: the places it fills, zone by zone; a place is zone · partCount + part. */
  private readonly placesOf: readonly Int32Array[];
  /** By tag; null for tags that are none. */
  private readonly flags: readonly (AlarmFlag | null)[];
  /** By tag. */
  private readonly units: readonly Units[];
  private readonly value: Float64Array;
  private readonly mark: Uint8Array;
  private readonly ms: Float64Array;
  /** Zones that have a reading of this time, the first `touchedCount` of the array. */
  private readonly touched: Int32Array;
  private touchedCount = 0;
  /** Zones of change logs, and when the next sample of each is due; NaN = nothing to hold. */
  private readonly held: readonly number[];
  private readonly isHeld: readonly boolean[];
  private readonly dueMs: Float64Array;
  private readonly standMs: number;
  private nowMs = NaN;
  /** When a change log wrote last. */
  private aliveMs = NaN;

  /**
   * @param tags Tags of all files that are poured together; entries name them by place.
   * @param hold The change log's rule, or null.
   */
  constructor(
    tags: readonly LogColumn[],
    private readonly hold: HoldRule | null,
    pourers: readonly ZonePourer[],
    /** By tag: what the file of the tag says of its order. */
    private readonly orders: readonly OrderNote[],
    flags: AlarmFlags,
  ) {
    this.flags = tags.map((tag) => flags.of(tag));
    const isRead = new Set(tags.filter((tag) => tag.role === 'reading').flatMap((tag) => tag.zones));
    const read = pourers.filter((pourer) => isRead.has(pourer.zone.index));
    const rank = new Map(read.map((pourer, i) => [pourer.zone.index, i]));
    this.buffers = read.map((pourer) => new ZoneRowsBuffer(pourer));
    this.placesOf = tags.map((tag) => placesOf(tag, rank));
    this.units = tags.map(unitsOf);
    this.value = new Float64Array(read.length * partCount).fill(NaN);
    this.mark = new Uint8Array(read.length * partCount);
    this.ms = new Float64Array(read.length * partCount).fill(NaN);
    this.touched = new Int32Array(read.length);
    this.dueMs = new Float64Array(read.length).fill(NaN);
    const changing = tags.filter((tag, i) => tag.role === 'reading' && hold?.isChangeLogged[i]);
    this.isHeld = read.map(({ zone }) => changing.some((tag) => tag.zones.includes(zone.index)));
    this.held = [...read.keys()].filter((place) => this.isHeld[place]);
    this.standMs = hold ? longestStandOfChangesMs : longestStandMs;
  }

  /**
   * Takes the entries `from` … `to` − 1 of a batch, times in UTC, values in the log's units. Entries earlier than the last
   * are counted and left out.
   */
  take(batch: TagBatch, from: number, to: number): void {
    const { clockMs, tag, value, mark } = batch;
    for (let i = from; i < to; i++) {
      const ms = clockMs[i]!;
      if (ms < this.nowMs) {
        const order = this.orders[tag[i]!]!;
        order.back(batch.line[i]!, this.nowMs, ms);
        order.older++;
        continue;
      }
      if (ms !== this.nowMs) this.advance(ms);
      if (this.hold?.isChangeLogged[tag[i]!]) this.aliveMs = ms;
      const places = this.placesOf[tag[i]!]!;
      if (places.length === 0) {
        this.flags[tag[i]!]?.take(ms, value[i]!);
        continue;
      }
      const units = this.units[tag[i]!]!;
      const inUnits = toDegC(value[i]! - units.zero, units);
      for (let k = 0; k < places.length; k++) this.put(places[k]!, inUnits, mark[i]!, ms, tag[i]!);
    }
  }

  private put(place: number, value: number, mark: number, ms: number, tag: number): void {
    if (place % partCount === 0 && !this.isNewReading(place, value, ms, this.orders[tag]!)) return;
    this.value[place] = value;
    this.mark[place] = mark;
    this.ms[place] = ms;
  }

  /** Counts a zone's reading in, unless this time already has one. */
  private isNewReading(place: number, value: number, ms: number, order: OrderNote): boolean {
    const zone = place / partCount;
    if (ms <= this.buffers[zone]!.pourer.lastMs || this.ms[place] === ms) {
      order.repeated++;
      if (this.ms[place] === ms && this.value[place] !== value && !Number.isNaN(value)) order.otherValues++;
      return false;
    }
    if (this.isHeld[zone]) this.dueMs[zone] = ms;
    else this.touched[this.touchedCount++] = zone;
    return true;
  }

  /** Everything of the time before is there: make its samples. */
  private advance(ms: number): void {
    for (let i = 0; i < this.touchedCount; i++) this.emit(this.touched[i]!, this.nowMs);
    this.touchedCount = 0;
    if (this.hold) this.emitHeld(ms, this.hold);
    this.nowMs = ms;
  }

  private emitHeld(untilMs: number, { stepMs, holdMs, silenceMs }: HoldRule): void {
    const isSilent = untilMs - this.aliveMs > silenceMs;
    const endMs = isSilent ? this.aliveMs + silenceMs : untilMs - 1;
    for (const zone of this.held) {
      const lastMs = Math.min(endMs, this.ms[zone * partCount]! + holdMs);
      for (; this.dueMs[zone]! <= lastMs; this.dueMs[zone]! += stepMs) this.emit(zone, this.dueMs[zone]!);
      // What a log does not say before it fell silent it must say again.
      if (isSilent) this.dueMs[zone] = NaN;
    }
  }

  private emit(zone: number, ms: number): void {
    const buffer = this.buffers[zone]!;
    const first = zone * partCount;
    const i = buffer.length++;
    buffer.timeMs[i] = ms;
    buffer.readingDegC[i] = this.value[first]!;
    buffer.marks[i] = this.mark[first]!;
    buffer.setpointDegC[i] = this.standing(first + setpointPart!, ms);
    buffer.outputPercent[i] = this.standing(first + outputPart!, ms);
    buffer.running[i] = this.standing(first + runningPart!, ms);
    if (buffer.length === blockRows) buffer.pour();
  }

  private standing(place: number, ms: number): number {
    return ms - this.ms[place]! <= this.standMs ? this.value[place]! : NaN;
  }

  finish(): void {
    this.advance(Number.isNaN(this.nowMs) ? NaN : this.nowMs + 1);
    for (const buffer of this.buffers) buffer.pour();
  }
}

function placesOf({ role, zones }: LogColumn, rank: ReadonlyMap<number, number>): Int32Array {
  const part = parts.findIndex((name) => name === role);
  const ranks = zones.map((zone) => rank.get(zone)).filter((zone) => zone !== undefined);
  return Int32Array.from(part < 0 ? [] : ranks, (zone) => zone * partCount + part);
}

type Units = Pick<LogColumn, 'unit' | 'scale'> & { readonly zero: number };

/**
 * What `toDegC` makes our units with, also of numbers that are no temperatures. Of one shape for all tags: tags are made
 * in several places, and the engine takes the long way to read those.
 */
function unitsOf({ role, unit, scale, zero = 0 }: LogColumn): Units {
  if (role === 'running') return { unit: 'degC', scale: 1, zero: 0 };
  return { unit: role === 'output' ? 'degC' : unit, scale, zero };
}
