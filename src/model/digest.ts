/**
 * A zone minute by minute. All arrays have `PlantDigest.length` places; place i covers
 * [startMs + i·periodMs, startMs + (i+1)·periodMs).
 *
 * The definition is what a SQL engine computes with GROUP BY zone, minute over good readings:
 * COUNT(*), first and last by time, MIN, MAX, AVG, STDDEV_POP of the reading, AVG of output, AVG of set point,
 * AVG of running, and COUNT of samples that are not good. NaN where nothing was there to be counted.
 */
export interface ZoneDigest {
  readonly readingCount: Uint16Array;
  readonly badCount: Uint16Array;
  readonly firstDegC: Float32Array;
  readonly lastDegC: Float32Array;
  readonly minDegC: Float32Array;
  readonly maxDegC: Float32Array;
  readonly meanDegC: Float32Array;
  /** Standard deviation of the readings inside the minute (population form). */
  readonly spreadDegC: Float32Array;
  readonly outputPercent: Float32Array;
  readonly setpointDegC: Float32Array;
  /** 0 to 1. */
  readonly runningShare: Float32Array;
}

/**
 * All zones on one grid of minutes. Digests merge, so files may come in any order, overlap or repeat.
 * `periodMs` is 60 000, or a multiple of it where the window is so long that whole minutes would not fit in memory.
 */
export interface PlantDigest {
  /** Start of the first minute, UTC, a multiple of `periodMs`. */
  readonly startMs: number;
  readonly periodMs: number;
  readonly length: number;
  /** By zone index. */
  readonly zones: readonly ZoneDigest[];
}
