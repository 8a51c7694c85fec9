import type { FaultPlan } from './faults/fault.js';
import { cell, type MadeZone } from './made-plant.js';
import type { RecorderParameters, ZoneParameters } from './plant-parameters.js';

/** What the recorder samples from one zone at one moment. */
export interface Sample {
  readonly readingDegC: number;
  readonly isAboveScale: boolean;
  readonly isBelowScale: boolean;
  readonly setpointDegC: number;
  readonly outputPercent: number;
}

/** Codes that a mean over the interval gets mixed with, °C. */
export interface ScaleEnds {
  readonly highDegC: number;
  readonly lowDegC: number;
}

/** Records one zone: instant values or means, restarts as 0.0, a tag that hangs or goes missing. */
export class ZoneRecorder {
  readonly zone: MadeZone;
  readonly #recorder: RecorderParameters;
  readonly #ends: ScaleEnds;
  readonly #tagFaults: readonly FaultPlan[];
  #sumDegC = 0;
  #count = 0;
  #codes = 0;
  #zeroRowsLeft = 0;

  constructor(
    index: number,
    zone: ZoneParameters,
    rows: number,
    recorder: RecorderParameters,
    ends: ScaleEnds,
    faults: readonly FaultPlan[],
  ) {
    this.#recorder = recorder;
    this.#ends = ends;
    this.#tagFaults = faults.filter(({ kind }) => kind === 'tag_frozen' || kind === 'tag_missing');
    this.zone = {
      index,
      name: zone.name,
      machine: zone.machine,
      card: zone.card,
      readingDegC: new Float64Array(rows),
      state: new Uint8Array(rows),
      setpointDegC: new Float64Array(rows),
      outputPercent: new Float64Array(rows),
      trueDegC: new Float64Array(rows),
    };
  }

  get logsMean(): boolean {
    return this.#recorder.logsMean;
  }

  restarted(): void {
    this.#zeroRowsLeft = this.#recorder.zeroRows;
  }

  /** Adds one step to the mean of the running interval. */
  accumulate({ readingDegC, isAboveScale, isBelowScale }: Sample): void {
    this.#count++;
    if (isAboveScale || isBelowScale) this.#codes++;
    this.#sumDegC += isAboveScale ? this.#ends.highDegC : isBelowScale ? this.#ends.lowDegC : readingDegC;
  }

  record(row: number, nowS: number, sample: Sample, trueDegC: number, isHung: boolean): void {
    const { zone } = this;
    zone.trueDegC[row] = trueDegC;
    const tag = this.#tagFaults.find(({ onsetS, fixedS }) => nowS >= onsetS && nowS < (fixedS ?? Infinity));
    if ((isHung || tag?.kind === 'tag_frozen') && row > 0) {
      this.#repeat(row);
    } else {
      zone.setpointDegC[row] = sample.setpointDegC;
      zone.outputPercent[row] = sample.outputPercent;
      this.#reading(row, sample);
      if (tag) zone.state[row] = cell.missing;
    }
    if (zone.state[row] !== cell.good) zone.readingDegC[row] = NaN;
    this.#sumDegC = this.#count = this.#codes = 0;
  }

  #repeat(row: number): void {
    const { readingDegC, setpointDegC, outputPercent, state } = this.zone;
    readingDegC[row] = readingDegC[row - 1] ?? NaN;
    setpointDegC[row] = setpointDegC[row - 1] ?? NaN;
    outputPercent[row] = outputPercent[row - 1] ?? NaN;
    state[row] = state[row - 1] ?? cell.missing;
  }

  #reading(row: number, sample: Sample): void {
    const { readingDegC, state } = this.zone;
    const isMixed = this.#recorder.logsMean && this.#codes > 0 && this.#codes < this.#count;
    const hasMean = this.#recorder.logsMean && this.#count > 0 && (this.#codes === 0 || isMixed);
    readingDegC[row] = hasMean ? this.#sumDegC / this.#count : sample.readingDegC;
    state[row] = sample.isAboveScale ? cell.aboveScale : sample.isBelowScale ? cell.belowScale : cell.good;
    if (hasMean) state[row] = cell.good;
    if (this.#zeroRowsLeft > 0) {
      this.#zeroRowsLeft--;
      state[row] = cell.restartZero;
    }
  }
}
