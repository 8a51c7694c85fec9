import type { LogColumn } from '../model/log-file.js';
import { cellMark } from '../model/log-file.js';
import type { OrderNote } from './order-note.js';
import { toDegC } from './degrees.js';
import type { ZonePourer } from './zone-pourer.js';

const blockRows = 1024;
/** A set point or a running state stands until it is changed, but not longer than this without a word (common practice). */
const longestStandMs = 24 * 3_600_000;

/** What a change log holds its values for; null for logs that write every value at every step. */
export interface HoldRule {
  readonly stepMs: number;
  readonly holdMs: number;
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

/** Last value of a tag. */
interface Latest {
  value: number;
  mark: number;
  ms: number;
}

interface ZoneState {
  readonly buffer: ZoneRowsBuffer;
  readonly reading: Latest;
  readonly setpoint: Latest;
  readonly output: Latest;
  running: Latest;
  isTouched: boolean;
  /** Change logs: when the next sample is due; NaN = nothing to hold. */
  dueMs: number;
}

function latest(): Latest {
  return { value: NaN, mark: cellMark.number, ms: NaN };
}

/**
 * Turns entries (time, tag, value) in time order into samples of zones. All entries of one time make one sample per zone;
 * set points and outputs stand until the next. In a change log readings are held on a grid, up to the limit.
 */
export class TagBlocks {
  private readonly states = new Map<number, ZoneState>();
  private readonly list: ZoneState[] = [];
  private touched: ZoneState[] = [];
  private nowMs = NaN;
  private readonly zoneStates: ZoneState[][];

  /**
   * @param tags Tags of all files that are poured together; entries name them by place.
   * @param hold The change log's rule, or null.
   */
  constructor(
    private readonly tags: readonly LogColumn[],
    private readonly hold: HoldRule | null,
    pourers: readonly ZonePourer[],
    private readonly order: OrderNote,
  ) {
    const isRead = new Set(tags.filter((tag) => tag.role === 'reading').flatMap((tag) => tag.zones));
    for (const pourer of pourers) {
      if (!isRead.has(pourer.zone.index)) continue;
      const state: ZoneState = {
        ...{
          buffer: new ZoneRowsBuffer(pourer),
          reading: latest(),
          setpoint: latest(),
          output: latest(),
          running: latest(),
        },
        ...{ isTouched: false, dueMs: NaN },
      };
      this.states.set(pourer.zone.index, state);
      this.list.push(state);
    }
    this.zoneStates = tags.map((tag) =>
      tag.zones.map((zone) => this.states.get(zone)).filter((state) => state !== undefined),
    );
  }

  /** One entry; `ms` is UTC, `value` in the log's units. Entries earlier than the last are counted and left out. */
  take(ms: number, tagNumber: number, value: number, mark: number, line: number): void {
    if (ms !== this.nowMs) {
      if (ms < this.nowMs) {
        this.order.back(line, this.nowMs, ms);
        this.order.older++;
        return;
      }
      this.advance(ms);
    }
    const tag = this.tags[tagNumber]!;
    if (tag.role === 'running') {
      for (const state of this.zoneStates[tagNumber]!) set(state.running, value, mark, ms);
      return;
    }
    for (const state of this.zoneStates[tagNumber]!) {
      if (tag.role === 'reading') this.takeReading(state, toDegC(value, tag), mark, ms);
      else if (tag.role === 'setpoint') set(state.setpoint, toDegC(value, tag), mark, ms);
      else if (tag.role === 'output') set(state.output, value * tag.scale, mark, ms);
    }
  }

  private takeReading(state: ZoneState, degC: number, mark: number, ms: number): void {
    if (ms <= state.buffer.pourer.lastMs || state.reading.ms === ms) {
      this.order.repeated++;
      return;
    }
    set(state.reading, degC, mark, ms);
    state.dueMs = ms;
    if (!state.isTouched) this.touched.push(state);
    state.isTouched = true;
  }

  /** Everything of the time before is there: make its samples. */
  private advance(ms: number): void {
    if (this.hold) for (const state of this.list) this.emitHeld(state, ms, this.hold);
    else for (const state of this.touched) emit(state, this.nowMs);
    for (const state of this.touched) state.isTouched = false;
    if (this.touched.length > 0) this.touched = [];
    this.nowMs = ms;
  }

  private emitHeld(state: ZoneState, untilMs: number, { stepMs, holdMs }: HoldRule): void {
    const lastMs = Math.min(untilMs - 1, state.reading.ms + holdMs);
    for (; state.dueMs <= lastMs; state.dueMs += stepMs) emit(state, state.dueMs);
  }

  finish(): void {
    this.advance(Number.isNaN(this.nowMs) ? NaN : this.nowMs + 1);
    for (const state of this.list) state.buffer.pour();
  }
}

function set(latest: Latest, value: number, mark: number, ms: number): void {
  latest.value = value;
  latest.mark = mark;
  latest.ms = ms;
}

function emit({ buffer, reading, setpoint, output, running }: ZoneState, ms: number): void {
  const i = buffer.length++;
  buffer.timeMs[i] = ms;
  buffer.readingDegC[i] = reading.value;
  buffer.marks[i] = reading.mark;
  buffer.setpointDegC[i] = standing(setpoint, ms);
  buffer.outputPercent[i] = standing(output, ms);
  buffer.running[i] = standing(running, ms);
  if (buffer.length === blockRows) buffer.pour();
}

function standing({ value, ms }: Latest, nowMs: number): number {
  return nowMs - ms <= longestStandMs ? value : NaN;
}
