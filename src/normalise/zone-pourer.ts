import { cellMark, type LogColumn } from '../model/log-file.js';
import type { SampleBlock } from '../model/sample-block.js';
import type { Zone } from '../model/zone.js';
import { fromDegC } from './degrees.js';
import { ReadingScreen, type LearntCodes } from './screen.js';

/** Takes blocks of samples, in time order for each zone. */
export interface SampleSink {
  block(block: SampleBlock): void;
  /** Called now and then with bytes read and bytes in all; packed files count as they unpack. */
  progress?(doneBytes: number, totalBytes: number): void;
}

/** Columns of one zone over some rows, in °C, percent and UTC. Arrays may be longer than `length`. */
export interface ZoneRows {
  readonly length: number;
  readonly timeMs: Float64Array;
  readonly readingDegC: Float64Array;
  /** null = all numbers. */
  readonly marks: Uint8Array | null;
  readonly setpointDegC: Float64Array;
  readonly outputPercent: Float64Array;
  readonly running: Float64Array;
}

/** The last step before the sink, one per zone: judges readings and keeps time strictly rising over all files. */
export class ZonePourer {
  /** Time of the last sample poured; NaN = none. */
  lastMs = NaN;
  firstMs = NaN;
  sampleCount = 0;
  /** Which of these a number was seen of; a column may stand in the log and be blank from end to end. */
  readonly seen = { setpoint: false, output: false, running: false };
  private readonly screen: ReadingScreen;
  private state = new Uint8Array(0);

  constructor(
    readonly zone: Zone,
    reading: Pick<LogColumn, 'unit' | 'scale'>,
    private readonly sink: SampleSink,
    learnt: LearntCodes,
    typicalDegC: number,
  ) {
    this.screen = new ReadingScreen((degC) => fromDegC(degC, reading), learnt, zone.samplingMs, typicalDegC);
  }

  /** Pours rows whose times rise strictly; rows up to the last one poured are passed over. */
  pour(rows: ZoneRows): void {
    const skipped = this.alreadyPoured(rows);
    if (skipped === rows.length) return;
    const { length, timeMs, readingDegC, marks, setpointDegC, outputPercent, running } =
      skipped === 0 ? rows : behind(rows, skipped);
    if (this.state.length < length) this.state = new Uint8Array(Math.max(length, 1024));
    this.look('setpoint', setpointDegC, length);
    this.look('output', outputPercent, length);
    this.look('running', running, length);
    if (marks) this.forgetTexts(length, marks, setpointDegC, outputPercent);
    this.screen.take(length, timeMs, readingDegC, marks, this.state);
    if (Number.isNaN(this.firstMs)) this.firstMs = timeMs[0]!;
    this.lastMs = timeMs[length - 1]!;
    this.sampleCount += length;
    this.sink.block({
      zone: this.zone.index,
      length,
      timeMs,
      readingDegC,
      state: this.state,
      setpointDegC,
      outputPercent,
      running,
    });
  }

  /**
   * A word in place of the reading, set point and output together, such as NaN, is of the recording: no input writes into
   * the other two. A zone without either says nothing of the kind.
   */
  private forgetTexts(
    length: number,
    marks: Uint8Array,
    setpointDegC: Float64Array,
    outputPercent: Float64Array,
  ): void {
    if (!this.seen.setpoint && !this.seen.output) return;
    for (let i = 0; i < length; i++)
      if (marks[i] === cellMark.otherText && Number.isNaN(setpointDegC[i]) && Number.isNaN(outputPercent[i]))
        marks[i] = cellMark.blank;
  }

  private look(what: keyof ZonePourer['seen'], values: Float64Array, length: number): void {
    if (!this.zone.has[what] || this.seen[what]) return;
    for (let i = 0; i < length && !this.seen[what]; i++) this.seen[what] = !Number.isNaN(values[i]!);
  }

  private alreadyPoured({ length, timeMs }: ZoneRows): number {
    let skipped = 0;
    while (skipped < length && timeMs[skipped]! <= this.lastMs) skipped++;
    return skipped;
  }
}

function behind(rows: ZoneRows, skipped: number): ZoneRows {
  return {
    length: rows.length - skipped,
    timeMs: rows.timeMs.subarray(skipped),
    readingDegC: rows.readingDegC.subarray(skipped),
    marks: rows.marks?.subarray(skipped) ?? null,
    setpointDegC: rows.setpointDegC.subarray(skipped),
    outputPercent: rows.outputPercent.subarray(skipped),
    running: rows.running.subarray(skipped),
  };
}
