/**
 * What a reading is worth, one small number per sample. Anything but `good` has no temperature in it,
 * whatever number stands in `readingDegC`.
 */
export const readingState = {
  good: 0,
  /** The cell was empty or a dash. */
  blank: 1,
  /** A word that says open or over range: ####, OL, OPEN. */
  openText: 2,
  /** Another word where a number belongs: Bad, Error. */
  otherText: 3,
  /** The quality column says the value is not to be trusted. */
  badQuality: 4,
  /** A number that is a code for "above scale" (full-scale high). */
  aboveScale: 5,
  /** A number that is a code for "below scale" (full-scale low). */
  belowScale: 6,
  /** Zero that no cooling can explain: a controller that restarts. */
  restartZero: 7,
  /** The number that the recording writes in all columns at once when it has no value at all. */
  noValue: 8,
} as const;

export type ReadingState = (typeof readingState)[keyof typeof readingState];

/**
 * Up to a few thousand samples of one zone, in one unit and one clock: °C and UTC milliseconds.
 * Arrays may be longer than `length`; only the first `length` places count. A consumer must not keep a block:
 * its arrays are used again for the next one.
 */
export interface SampleBlock {
  /** Index into the list of zones. */
  readonly zone: number;
  readonly length: number;
  /** Strictly rising, within the block and from one block of a zone to its next. */
  readonly timeMs: Float64Array;
  /** NaN where the cell held no number; only a temperature where `state` is good. */
  readonly readingDegC: Float64Array;
  /** One {@link readingState} per sample. */
  readonly state: Uint8Array;
  /** NaN = not logged or not known at that time. */
  readonly setpointDegC: Float64Array;
  /** 0 to 100, NaN = not logged or not known at that time. */
  readonly outputPercent: Float64Array;
  /** 1 = the machine runs, 0 = it stands, NaN = not known. */
  readonly running: Float64Array;
}

/**
 * What several watchers ask of one block, worked out once for all of them. Numbers are of neighbouring samples inside
 * the block; what lies across its start is not in them. Valid as long as the block is.
 */
export interface BlockFacts {
  /** Readings with NaN wherever the sample is not good. */
  readonly degC: Float64Array;
  readonly isAllGood: boolean;
  /** Between two good readings in a row; 0 for none. */
  readonly largestStepDegC: number;
  /** Between two samples in a row; 0 for fewer than two. */
  readonly longestGapMs: number;
  /**
   * Fastest moves that heat sustained inside the block, fastest first: a few of either direction, °C/s. Moves slower than
   * those that decide the limit by the blocks before may be left out.
   */
  readonly fastestMoves: { readonly heating: readonly number[]; readonly cooling: readonly number[] };
}
