import { addColumn, partialOut, type PartialledOut } from '../../maths/added-column.js';
import { median } from '../../maths/quantile.js';
import { MAD_TO_SD } from '../../maths/spread.js';

/** Huber's tuning: 95 % efficiency for normal data (Huber 1981). */
const HUBER_TUNING = 1.345;
/** Trial times in the first, coarse search (own choice: finer than the interval of any onset). */
const COARSE_TRIALS = 120;
/** Rows per block when asking whether neighbouring rows err alike: 4 hours of half hours. */
const BLOCK_ROWS = 8;
/** 95 % of chi-square with one degree of freedom: a time whose gain is lower by no more is as good. */
const CHI_SQUARE_95 = 3.841458820694124;

/** Values over time in degrees of reading error, and the columns that explain them without a change. */
export interface Series {
  readonly timeMs: Float64Array;
  readonly degC: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly ridge: readonly number[];
  /** Inverse variances up to a factor. */
  readonly weights: Float64Array;
  /** Standard deviation of a row of weight 1 that no scatter may undercut: rounding, draughts. */
  readonly leastSd: number;
}

/**
 * How a change goes on after its onset: `step` stays; a ramp grows with this power of time, from one that levels out to
 * one that gets faster. What makes a sensor drift seldom goes at one even pace (common practice).
 */
export type Shape = 'step' | number;

/** Powers tried for a ramp (own choice: near enough that the best one errs little). */
export const rampPowers: readonly number[] = [0.6, 1, 1.5, 2];

/** A change of one shape at one time, in one series. */
export interface ChangeSize {
  /** Reading error gained by the end of the log. */
  readonly degC: number;
  readonly errorDegC: number;
  /** How much better it fits, in squared standard deviations. */
  readonly gain: number;
}

export interface ChangeFit {
  readonly shape: Shape;
  readonly onsetMs: number;
  readonly onsetLowMs: number;
  readonly onsetHighMs: number;
  readonly hot: ChangeSize | null;
  readonly cold: ChangeSize | null;
  readonly gain: number;
}

interface Prepared {
  readonly series: Series;
  readonly part: PartialledOut;
  /** Variance of one row of weight 1, neighbours that err alike taken into account. */
  readonly variance: number;
}

const nothing: ChangeSize = { degC: 0, errorDegC: Infinity, gain: 0 };

/**
 * Finds the change that explains both series best: one time for both, a size for each. Sizes are those at the
 * end of the log.
 *
 * @param hot Duty as reading error, or null. @param cold Soak offsets, or null.
 * @returns null where neither series can show this shape. Never throws.
 */
export function fitChange(shape: Shape, hot: Series | null, cold: Series | null, endMs: number): ChangeFit | null {
  const trials = trialTimes(shape, hot, cold, endMs);
  if (trials.length === 0) return null;
  const parts = [prepareAlone(shape, hot, trials, endMs), prepareAlone(shape, cold, trials, endMs)] as const;
  return searchAll(shape, parts, trials, endMs);
}

/** Each series is weighed by its scatter about its own best change, so that neither spoils the other's. */
function prepareAlone(shape: Shape, series: Series | null, trials: readonly number[], endMs: number): Prepared | null {
  if (!series) return null;
  const best = searchAll(shape, [prepare(series, null), null], trials, endMs);
  return prepare(series, shapeColumn(shape, best.onsetMs, series.timeMs, endMs));
}

/** 0 before the onset, 1 at the end of the log. */
export function shapeColumn(shape: Shape, onsetMs: number, timeMs: Float64Array, endMs: number): Float64Array {
  if (shape === 'step') return timeMs.map((at) => (at >= onsetMs ? 1 : 0));
  const lengthMs = endMs - onsetMs;
  return timeMs.map((at) => (at > onsetMs ? ((at - onsetMs) / lengthMs) ** shape : 0));
}

/** Takes the columns out with weights that let outliers count less, judged with the change found so far in the model. */
function prepare(series: Series, change: Float64Array | null): Prepared {
  const model = change ? [...series.columns, change] : series.columns;
  const full = partialOut(model, series.degC, series.weights, series.ridge);
  const rest = full.rest.subarray(0, series.degC.length);
  const scale = MAD_TO_SD * median(rest.map(Math.abs));
  const huber = rest.map((r) => (scale > 0 ? Math.min(1, (HUBER_TUNING * scale) / Math.abs(r)) : 1));
  const weights = series.weights.map((w, i) => w * huber[i]!);
  const part = partialOut(series.columns, series.degC, weights, series.ridge);
  // Every column and the change take a degree of freedom; with few rows left that alone makes rests look small.
  const freed = rest.length / Math.max(1, rest.length - model.length - 1);
  return { series, part, variance: Math.max(series.leastSd ** 2, varianceOf(rest, scale) * freed) };
}

/** Robust variance, raised where blocks of neighbours err together more than chance lets them. */
function varianceOf(rest: Float64Array, scale: number): number {
  const blocks = Math.floor(rest.length / BLOCK_ROWS);
  if (blocks < 4) return scale ** 2;
  const means = Array.from({ length: blocks }, (_, b) => {
    const block = rest.subarray(b * BLOCK_ROWS, (b + 1) * BLOCK_ROWS);
    return block.reduce((sum, r) => sum + Math.max(-3 * scale, Math.min(3 * scale, r)), 0) / BLOCK_ROWS;
  });
  const blockScale = MAD_TO_SD * median(means.map(Math.abs));
  return Math.max(scale ** 2, BLOCK_ROWS * blockScale ** 2);
}

/** A shape with hardly a row behind its onset would be measured by its first bend alone. */
function isSeenAfter({ timeMs, columns }: Series, shape: Shape, onsetMs: number): boolean {
  const least = columns.length > 1 ? LEAST_HOT_ROWS : LEAST_COLD_ROWS;
  const after = timeMs.length - firstAfter(timeMs, onsetMs);
  return after >= least && (shape !== 'step' || timeMs.length - after >= least);
}

function firstAfter(timeMs: Float64Array, at: number): number {
  let low = 0;
  let high = timeMs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeMs[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}

function sizeAt(prepared: Prepared | null, shape: Shape, onsetMs: number, endMs: number): ChangeSize {
  if (!prepared || !isSeenAfter(prepared.series, shape, onsetMs)) return nothing;
  const { coefficient, information, gain } = addColumn(
    prepared.part,
    shapeColumn(shape, onsetMs, prepared.series.timeMs, endMs),
  );
  if (!(information > 0) || !(prepared.variance > 0)) return nothing;
  return {
    degC: coefficient,
    errorDegC: Math.sqrt(prepared.variance / information),
    gain: gain / prepared.variance,
  };
}

type Parts = readonly [Prepared | null, Prepared | null];

/** Both series may speak for one time only with one sign: a sensor that reads high is high hot and cold. */
function totalGain(hot: ChangeSize, cold: ChangeSize): number {
  return hot.degC * cold.degC >= 0 ? hot.gain + cold.gain : Math.max(hot.gain, cold.gain);
}

function searchAll(shape: Shape, [hot, cold]: Parts, trials: readonly number[], endMs: number): ChangeFit {
  const gainAt = (onsetMs: number) =>
    totalGain(sizeAt(hot, shape, onsetMs, endMs), sizeAt(cold, shape, onsetMs, endMs));
  const stride = Math.max(1, Math.floor(trials.length / COARSE_TRIALS));
  const gains = new Map<number, number>();
  const tryAt = (place: number) => {
    if (place >= 0 && place < trials.length && !gains.has(place)) gains.set(place, gainAt(trials[place]!));
  };
  for (let place = 0; place < trials.length; place += stride) tryAt(place);
  const coarse = bestOf(gains);
  for (let place = coarse - stride; place <= coarse + stride; place++) tryAt(place);
  const best = bestOf(gains);
  const near = [...gains]
    .filter(([, gain]) => gain >= gains.get(best)! - CHI_SQUARE_95)
    .map(([place]) => trials[place]!);
  const onsetMs = trials[best]!;
  return {
    shape,
    onsetMs,
    onsetLowMs: Math.min(...near),
    onsetHighMs: Math.max(...near),
    hot: hot && sizeAt(hot, shape, onsetMs, endMs),
    cold: cold && sizeAt(cold, shape, onsetMs, endMs),
    gain: gains.get(best)!,
  };
}

function bestOf(gains: ReadonlyMap<number, number>): number {
  let best = -1;
  let most = -Infinity;
  for (const [place, gain] of gains) if (gain > most) [most, best] = [gain, place];
  return best;
}

/** Rows a series must have on either side of a change: two hours of half hours, two soaks (own choice). */
const LEAST_HOT_ROWS = 4;
const LEAST_COLD_ROWS = 2;
/** Hours that a ramp must last to be told from scatter (own choice). */
const SHORTEST_RAMP_MS = 6 * 3_600_000;

/** Times at which either series has rows enough on both sides. */
function trialTimes(shape: Shape, hot: Series | null, cold: Series | null, endMs: number): number[] {
  const times = new Set<number>();
  for (const [series, least] of [
    [hot, LEAST_HOT_ROWS],
    [cold, LEAST_COLD_ROWS],
  ] as const) {
    if (!series) continue;
    const rows = series.timeMs;
    const from = shape === 'step' ? least : 0;
    for (let i = from; i <= rows.length - least; i++) {
      const before = i > 0 ? rows[i - 1]! : rows[i]!;
      times.add(shape === 'step' ? (before + rows[i]!) / 2 : before);
    }
  }
  return [...times].filter((at) => shape === 'step' || endMs - at >= SHORTEST_RAMP_MS).sort((a, b) => a - b);
}
