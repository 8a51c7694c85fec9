import { readingState, type SampleBlock } from '../../model/sample-block.js';

/** A hole longer than this many sampling steps is a gap (common practice: one lost row is none). */
const gapSteps = 2.5;

/** Counts one zone's samples, gaps and extremes while they pass. */
export class GapCount {
  samples = 0;
  notGood = 0;
  gaps = 0;
  longestMs = 0;
  firstMs = NaN;
  lastMs = NaN;
  lowestDegC = NaN;
  highestDegC = NaN;

  constructor(private readonly stepMs: number) {}

  take({ length, timeMs, state, readingDegC }: SampleBlock): void {
    if (Number.isNaN(this.firstMs) && length > 0) this.firstMs = timeMs[0]!;
    for (let i = 0; i < length; i++) {
      const gapMs = timeMs[i]! - this.lastMs;
      if (gapMs > gapSteps * this.stepMs) {
        this.gaps++;
        this.longestMs = Math.max(this.longestMs, gapMs);
      }
      this.lastMs = timeMs[i]!;
      if (state[i] !== readingState.good) this.notGood++;
      else this.extend(readingDegC[i]!);
    }
    this.samples += length;
  }

  private extend(degC: number): void {
    if (!(degC >= this.lowestDegC)) this.lowestDegC = degC;
    if (!(degC <= this.highestDegC)) this.highestDegC = degC;
  }
}
