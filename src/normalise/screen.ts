import { cellMark } from '../model/log-file.js';
import { readingState, type ReadingState } from '../model/sample-block.js';
import { coldestDegC, hottestDegC, tableCode } from './full-scale-codes.js';

/** A change up to this much needs no further look (common practice: no code of the table lies so near to a hot zone). */
const smallJumpDegC = 8;
/** A number of the table is a code when the reading jumps to it by more than this from the last one that was trusted. */
const codeJumpDegC = 40;
/** No zone loses or gains this much to land on exactly 0 from one sample to the next (common practice). */
const zeroJumpDegC = 10;
const zeroRateDegCPerS = 0.1;
/** A restart takes minutes; a zero that stays is a dead input (common practice). */
const longestRestartMs = 10 * 60_000;
/** A number not in the table is learnt as a code when the reading jumps this far and then repeats it exactly. */
const learntJumpDegC = 100;
const learntRateDegCPerS = 2;
const learntRepeats = 4;
/** Learnt codes lie outside what the zone ever read, by this much. */
const learntBeyondDegC = 100;
const learntBelowDegC = -30;
/** After a gap of this many samples a jump proves nothing. */
const longestGapSamples = 5;
/** A reading that has not come back to the trusted one after this while is the new truth. */
const trustAgainMs = 10 * 60_000;

/** What all zones of one run share: codes learnt on one zone hold for the others. */
export class LearntCodes {
  readonly counts = new Map<number, number>();

  add(raw: number): void {
    this.counts.set(raw, (this.counts.get(raw) ?? 0) + 1);
  }

  has(raw: number): boolean {
    return this.counts.has(raw);
  }
}

const stateOfMark: readonly ReadingState[] = [];
(stateOfMark as ReadingState[])[cellMark.number] = readingState.good;
(stateOfMark as ReadingState[])[cellMark.blank] = readingState.blank;
(stateOfMark as ReadingState[])[cellMark.openText] = readingState.openText;
(stateOfMark as ReadingState[])[cellMark.otherText] = readingState.otherText;
(stateOfMark as ReadingState[])[cellMark.badQuality] = readingState.badQuality;
(stateOfMark as ReadingState[])[cellMark.noValue] = readingState.noValue;

/**
 * Tells for each sample of one zone what its reading is worth, looking only back and to the end of the block at hand.
 * A number is taken for a code only when the zone cannot really be there; a reading that stands still inside the range
 * stays a reading, and detectors judge it.
 */
export class ReadingScreen {
  private trustedDegC = NaN;
  private trustedMs = NaN;
  private codeRaw = NaN;
  private codeState: ReadingState = readingState.good;
  private codeSinceMs = NaN;
  private doubtSinceMs = NaN;
  private hottestDegC = -Infinity;
  private coldestDegC = Infinity;
  private readonly stepMs: number;

  /**
   * @param toRaw Turns °C back into the log's own number, in which codes are written.
   * @param typicalDegC Usual reading of the plant, for a log that begins with a code; NaN = not known.
   */
  constructor(
    private readonly toRaw: (degC: number) => number,
    private readonly learnt: LearntCodes,
    samplingMs: number,
    private readonly typicalDegC: number,
  ) {
    this.stepMs = Number.isNaN(samplingMs) ? 60_000 : samplingMs;
  }

  /**
   * Fills `state` from readings and marks. Arrays of equal length or longer; `marks` may be null for all numbers.
   */
  take(
    length: number,
    timeMs: Float64Array,
    readingDegC: Float64Array,
    marks: Uint8Array | null,
    state: Uint8Array,
  ): void {
    for (let i = 0; i < length;) {
      const end = this.trustRun(i, length, timeMs, readingDegC, marks);
      if (end > i) state.fill(readingState.good, i, end);
      if (end < length) state[end] = this.stateOf(end, length, timeMs, readingDegC, marks);
      i = end + 1;
    }
  }

  /** Trusts the readings from `from` on that follow each other in small steps, as nearly all do; returns the first other. */
  private trustRun(
    from: number,
    length: number,
    timeMs: Float64Array,
    readingDegC: Float64Array,
    marks: Uint8Array | null,
  ): number {
    let before = this.trustedDegC;
    let hottest = this.hottestDegC;
    let coldest = this.coldestDegC;
    let i = from;
    for (; i < length; i++) {
      const degC = readingDegC[i]!;
      const jump = degC - before; // NaN where either is
      const isNear = jump < smallJumpDegC && jump > -smallJumpDegC && degC !== 0;
      if (!isNear || (marks !== null && marks[i] !== 0)) break;
      before = degC;
      if (degC > hottest) hottest = degC;
      if (degC < coldest) coldest = degC;
    }
    if (i === from) return i;
    this.hottestDegC = hottest;
    this.coldestDegC = coldest;
    this.trust(before, timeMs[i - 1]!);
    return i;
  }

  private stateOf(
    i: number,
    length: number,
    timeMs: Float64Array,
    readingDegC: Float64Array,
    marks: Uint8Array | null,
  ): ReadingState {
    const mark = marks === null ? 0 : marks[i]!;
    if (mark !== 0) return stateOfMark[mark]!;
    if (Number.isNaN(readingDegC[i]!)) return readingState.blank;
    return this.judge(i, length, timeMs, readingDegC, marks);
  }

  private trust(degC: number, ms: number): void {
    this.trustedDegC = degC;
    this.trustedMs = ms;
    this.codeState = readingState.good;
    this.doubtSinceMs = NaN;
    if (degC > this.hottestDegC) this.hottestDegC = degC;
    if (degC < this.coldestDegC) this.coldestDegC = degC;
  }

  private judge(
    i: number,
    length: number,
    timeMs: Float64Array,
    readingDegC: Float64Array,
    marks: Uint8Array | null,
  ): ReadingState {
    const degC = readingDegC[i]!;
    const ms = timeMs[i]!;
    if (degC >= hottestDegC) return this.enterCode(degC, ms, readingState.aboveScale);
    if (degC <= coldestDegC) return this.enterCode(degC, ms, readingState.belowScale);
    const raw = this.roundRaw(degC);
    if (this.codeState !== readingState.good && raw === this.codeRaw) return this.stayInCode(ms);
    const code = this.codeOf(raw, degC, ms) ?? this.learn(i, length, timeMs, readingDegC, marks);
    if (code !== null) return this.enterCode(degC, ms, code);
    this.doubtOrTrust(degC, ms);
    return readingState.good;
  }

  /** A far jump is not trusted at once, so that readings on their way to the end of the scale do not become the truth. */
  private doubtOrTrust(degC: number, ms: number): void {
    const isFar = Math.abs(degC - this.trustedDegC) / Math.max(1, (ms - this.trustedMs) / 1000) > learntRateDegCPerS;
    if (!isFar || ms - this.doubtSinceMs >= trustAgainMs) return this.trust(degC, ms);
    this.codeState = readingState.good;
    if (Number.isNaN(this.doubtSinceMs)) this.doubtSinceMs = ms;
  }

  private enterCode(degC: number, ms: number, state: ReadingState): ReadingState {
    const raw = this.roundRaw(degC);
    if (this.codeState === readingState.good || raw !== this.codeRaw) this.codeSinceMs = ms;
    this.codeRaw = raw;
    this.codeState = state;
    return state;
  }

  private stayInCode(ms: number): ReadingState {
    if (this.codeState === readingState.restartZero && ms - this.codeSinceMs > longestRestartMs)
      this.codeState = readingState.belowScale;
    return this.codeState;
  }

  /** The log's own number, free of what the unit conversion left in the last digits. */
  private roundRaw(degC: number): number {
    return Math.round(this.toRaw(degC) * 1000) / 1000;
  }

  private codeOf(raw: number, degC: number, ms: number): ReadingState | null {
    const end = tableCode(raw) ?? (this.learnt.has(raw) ? (degC > this.trustedDegC ? 'above' : 'below') : null);
    if (end === null) return null;
    if (Number.isNaN(this.trustedDegC)) return this.codeAtStart(end, degC);
    const jumpDegC = degC - this.trustedDegC;
    if (end === 'zero') return this.isZero(jumpDegC, ms) ? readingState.restartZero : null;
    if (end === 'above') return jumpDegC > codeJumpDegC ? readingState.aboveScale : null;
    return jumpDegC < -codeJumpDegC ? readingState.belowScale : null;
  }

  private isZero(jumpDegC: number, ms: number): boolean {
    const rate = Math.abs(jumpDegC) / Math.max(1, (ms - this.trustedMs) / 1000);
    return Math.abs(jumpDegC) > zeroJumpDegC && rate > zeroRateDegCPerS;
  }

  /** Nothing came before: the usual reading of the plant stands in for it. */
  private codeAtStart(end: 'above' | 'below' | 'zero', degC: number): ReadingState | null {
    const jumpDegC = degC - this.typicalDegC;
    if (end === 'above' && jumpDegC > 2 * learntJumpDegC) return readingState.aboveScale;
    if (end === 'below' && jumpDegC < -learntJumpDegC) return readingState.belowScale;
    return null;
  }

  /** A jump that no heat can make, onto a number that then repeats to the last digit, outside all that was read before. */
  private learn(
    i: number,
    length: number,
    timeMs: Float64Array,
    readingDegC: Float64Array,
    marks: Uint8Array | null,
  ): ReadingState | null {
    const degC = readingDegC[i]!;
    const gapMs = timeMs[i]! - this.trustedMs;
    const jumpDegC = degC - this.trustedDegC;
    const isBeyond = degC > this.hottestDegC + learntBeyondDegC || (degC < this.coldestDegC && degC < learntBelowDegC);
    if (
      Number.isNaN(this.trustedDegC) ||
      !isBeyond ||
      Math.abs(jumpDegC) < learntJumpDegC ||
      gapMs > longestGapSamples * this.stepMs
    )
      return null;
    if (Math.abs(jumpDegC) / Math.max(1, gapMs / 1000) < learntRateDegCPerS) return null;
    let repeats = 1;
    for (let j = i + 1; j < length && readingDegC[j] === degC && !(marks && marks[j]); j++) repeats++;
    if (repeats < learntRepeats) return null;
    this.learnt.add(this.roundRaw(degC));
    return jumpDegC > 0 ? readingState.aboveScale : readingState.belowScale;
  }
}
