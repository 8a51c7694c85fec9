import { alarmRowState, type AlarmLabel, type AlarmRows, type AlarmRowState } from '../../model/event-rows.js';

/** Collects the rows of alarm logs as columns that grow by doubling. */
export class AlarmRowTable implements AlarmRows {
  length = 0;
  startMs = new Float64Array(1024);
  endMs = new Float64Array(1024);
  acknowledgedMs = new Float64Array(1024);
  state = new Uint8Array(1024);
  label = new Uint32Array(1024);
  file = new Uint16Array(1024);
  readonly labels: AlarmLabel[] = [];
  private readonly labelIndex = new Map<string, number>();

  add(file: number, state: AlarmRowState, startMs: number, endMs: number, acknowledgedMs: number, label: number): void {
    if (this.length === this.startMs.length) this.grow();
    this.startMs[this.length] = startMs;
    this.endMs[this.length] = state === alarmRowState.span ? endMs : NaN;
    this.acknowledgedMs[this.length] = acknowledgedMs;
    this.state[this.length] = state;
    this.label[this.length] = label;
    this.file[this.length++] = file;
  }

  /** The index of a label; equal labels share one. */
  labelOf(label: AlarmLabel): number {
    const key = [label.source, label.zone, label.machine, label.code, label.message, label.priority].join('\u0000');
    const known = this.labelIndex.get(key);
    if (known !== undefined) return known;
    this.labelIndex.set(key, this.labels.length);
    return this.labels.push(label) - 1;
  }

  private grow(): void {
    const size = this.startMs.length * 2;
    const grown = <T extends Float64Array | Uint8Array | Uint16Array | Uint32Array>(into: T, from: T): T => {
      into.set(from);
      return into;
    };
    this.startMs = grown(new Float64Array(size), this.startMs);
    this.endMs = grown(new Float64Array(size), this.endMs);
    this.acknowledgedMs = grown(new Float64Array(size), this.acknowledgedMs);
    this.state = grown(new Uint8Array(size), this.state);
    this.label = grown(new Uint32Array(size), this.label);
    this.file = grown(new Uint16Array(size), this.file);
  }
}
