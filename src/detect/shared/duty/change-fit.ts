import { HOUR_MS } from '../../../model/time-units.js';
import { addColumn, partialOut, restWithColumn, type PartialledOut } from '../../../maths/added-column.js';
import { firstPlaceFrom } from '../../../maths/first-place.js';
import { highest, lowest } from '../../../maths/extremes.js';
import { tailColumns, type TryOnset } from '../../../maths/tail-columns.js';
import { median } from '../../../maths/quantile.js';
import { MAD_TO_SD } from '../../../maths/spread.js';
import { oncePer } from '../basics/memo.js';
import { rampHeights } from './ramp-heights.js';
import { trialTimes, type Shape } from './trial-times.js';

/** Huber's tuning: 95 % efficiency for normal data (Huber 1981). */
const HUBER_TUNING = 1.345;
/** Trial times in the first, coarse search (own choice: finer than the interval of any onset). */
const COARSE_TRIALS = 60;
/** Rows per block when asking whether neighbouring rows err alike: 4 hours of half hours. */
const BLOCK_ROWS = 8;
/** 95 % of chi-square with one degree of freedom: a time whose gain is lower by no more is as good. */
const CHI_SQUARE_95 = 3.841458820694124;

/** Values over time in degrees of reading error, and the columns that explain them without a change. */
export interface ChangeSeries {
  readonly timeMs: Float64Array;
  readonly degC: Float64Array;
  readonly columns: readonly Float64Array[];
  readonly ridge: readonly number[];
  /** Inverse variances up to a factor. */
  readonly weights: Float64Array;
  /** Standard deviation of a row of weight 1 that no scatter may undercut: rounding, draughts. */
  readonly leastSd: number;
  /** Rows it must have behind a change, and before a step. */
  readonly leastRows: number;
  readonly leastRowsBefore: number;
}

/** Powers tried for a ramp (own choice: near enough that the best one errs little). */
export const rampPowers: readonly number[] = [2 / 3, 1, 3 / 2];

/** A change of one shape at one time, in one series. */
export interface ChangeSize {
  /** Reading error gained by the end of the log. */
  readonly degC: number;
  readonly errorDegC: number;
  /** How much better it fits, in squared standard deviations. */
  readonly gain: number;
}

/** The best change of one shape: when it came, its size in either series (null = no such series), and how well it fits. */
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
  readonly series: ChangeSeries;
  readonly part: PartialledOut;
  /** Variance of one row of weight 1, neighbours that err alike taken into account. */
  readonly variance: number;
}

const nothing: ChangeSize = { degC: 0, errorDegC: Infinity, gain: 0 };

/**
 * Finds the change that explains both series best, of several shapes: one time for both, a size for each. Sizes are
 * those at the end of the log.
 *
 * @param hot Duty as reading error, or null. @param cold Soak offsets, or null.
 * @returns null where neither series can show a change. Never throws.
 */
export function fitChange(
  shapes: readonly Shape[],
  hot: ChangeSeries | null,
  cold: ChangeSeries | null,
  endMs: number,
): ChangeFit | null {
  const parts = [prepareAlone(shapes, hot, endMs), prepareAlone(shapes, cold, endMs)] as const;
  return bestShape(shapes, parts, endMs);
}

/** Each series is weighed by its scatter about its own best change, so that neither spoils the other's. */
function prepareAlone(shapes: readonly Shape[], series: ChangeSeries | null, endMs: number): Prepared | null {
  if (!series) return null;
  const plain = preparedPlain(series);
  const best = bestShape(shapes, [plain, null], endMs);
  return best ? prepare(series, shapeColumn(best.shape, best.onsetMs, series.timeMs, endMs)) : plain;
}

/** Ramps and steps are tried on the same series. */
const preparedPlain = oncePer((series: ChangeSeries): Prepared => prepare(series, null));

function bestShape(shapes: readonly Shape[], parts: Parts, endMs: number): ChangeFit | null {
  const times = parts.flatMap((part) => (part ? [part.series.timeMs] : []));
  const fits = shapes.flatMap((shape) => {
    const trials = trialTimes(shape, times, endMs);
    return trials.length > 0 ? [searchAll(shape, parts, trials, endMs)] : [];
  });
  return fits.reduce<ChangeFit | null>((best, fit) => (best === null || fit.gain > best.gain ? fit : best), null);
}

/** 0 before the onset; a step and a ramp are 1 at the end of the log, a decay is 1 at its onset. */
export function shapeColumn(shape: Shape, onsetMs: number, timeMs: Float64Array, endMs: number): Float64Array {
  const column = new Float64Array(timeMs.length);
  const heightAt = heightsOf(shape, onsetMs, endMs);
  for (let i = firstPlaceFrom(timeMs, onsetMs); i < timeMs.length; i++) column[i] = heightAt(timeMs[i]!);
  return column;
}

function heightsOf(shape: Shape, onsetMs: number, endMs: number): (atMs: number) => number {
  if (shape === 'step') return () => 1;
  const lengthMs = endMs - onsetMs;
  if (typeof shape === 'number') return (atMs) => ((atMs - onsetMs) / lengthMs) ** shape;
  const tauMs = shape.decayHours * HOUR_MS;
  return (atMs) => Math.exp((onsetMs - atMs) / tauMs);
}

/** Takes the columns out with weights that let outliers count less, judged with the change found so far in the model. */
function prepare(series: ChangeSeries, change: Float64Array | null): Prepared {
  const plain = unweighed(series);
  const rest = (change ? restWithColumn(plain, change) : plain.rest).subarray(0, series.degC.length);
  const scale = MAD_TO_SD * median(rest.map(Math.abs));
  const huber = rest.map((r) => (scale > 0 ? Math.min(1, (HUBER_TUNING * scale) / Math.abs(r)) : 1));
  const weights = series.weights.map((w, i) => w * huber[i]!);
  const part = partialOut(series.columns, series.degC, weights, series.ridge);
  // Every column and the change take a degree of freedom; with few rows left that alone makes rests look small.
  const freed = rest.length / Math.max(1, rest.length - series.columns.length - (change ? 1 : 0) - 1);
  return { series, part, variance: Math.max(series.leastSd ** 2, varianceOf(rest, scale) * freed) };
}

/**
 * Standard error of the size of a change that begins at a time, were there one: what is smaller than some of these
 * does not show.
 *
 * @returns Infinity where such a change could not be measured. Never throws.
 */
export function errorOfChange(series: ChangeSeries, shape: Shape, onsetMs: number, endMs: number): number {
  return sizesOf(preparedPlain(series), shape, endMs)(onsetMs).errorDegC;
}

/** How much of a column, 0 where there is no change, the series holds, by its scatter without it. Never throws. */
export function sizeOfColumn(series: ChangeSeries, column: Float64Array): ChangeSize {
  return sizeIn(preparedPlain(series), column);
}

/** The same by the scatter that is left with the column: for the one that was chosen. Costs a new fit. */
export function sizeOfKnownColumn(series: ChangeSeries, column: Float64Array): ChangeSize {
  return sizeIn(prepare(series, column), column);
}

function sizeIn({ part, variance }: Prepared, column: Float64Array): ChangeSize {
  const { coefficient, information, gain } = addColumn(part, column);
  if (!(information > 0 && variance > 0)) return nothing;
  return { degC: coefficient, errorDegC: Math.sqrt(variance / information), gain: gain / variance };
}

/** With the weights as given, which every change that is tried starts from. */
const unweighed = oncePer(({ columns, degC, weights, ridge }: ChangeSeries) =>
  partialOut(columns, degC, weights, ridge),
);

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
function isSeenAfter(
  { timeMs, leastRows, leastRowsBefore }: ChangeSeries,
  shape: Shape,
  from: number,
  onsetMs: number,
) {
  if (timeMs.length - from < leastRows) return false;
  if (typeof shape === 'number') return true;
  if (from < leastRowsBefore) return false;
  // A decay that is mostly over at the first look would be drawn out to any height.
  return shape === 'step' || timeMs[from]! - onsetMs <= shape.decayHours * HOUR_MS;
}

/** Sizes of a change of one shape in one series, for any onset. */
function sizesOf(prepared: Prepared | null, shape: Shape, endMs: number): (onsetMs: number) => ChangeSize {
  if (!prepared || !(prepared.variance > 0)) return () => nothing;
  const { series, variance } = prepared;
  const tryOnset = trierOf(prepared, shape, endMs);
  return (onsetMs) => {
    const from = firstPlaceFrom(series.timeMs, onsetMs);
    if (!isSeenAfter(series, shape, from, onsetMs)) return nothing;
    const { coefficient, information, gain } = tryOnset(onsetMs, from);
    if (!(information > 0)) return nothing;
    return { degC: coefficient, errorDegC: Math.sqrt(variance / information), gain: gain / variance };
  };
}

function trierOf({ series: { timeMs }, part }: Prepared, shape: Shape, endMs: number): TryOnset {
  if (shape === 'step') return tailColumns(part, timeMs, { decayPerMs: 0 });
  if (typeof shape === 'object') return tailColumns(part, timeMs, { decayPerMs: 1 / (shape.decayHours * HOUR_MS) });
  if (shape === 1) return toHeightAtEnd(tailColumns(part, timeMs, 'line'), endMs);
  const heights = rampHeights(timeMs, shape, endMs);
  return (onsetMs, from) => addColumn(part, heights(onsetMs, from), from);
}

/** A line of slope 1 as one that is 1 at the end of the log. */
function toHeightAtEnd(tryLine: TryOnset, endMs: number): TryOnset {
  return (onsetMs, from) => {
    const { coefficient, information, gain } = tryLine(onsetMs, from);
    const lengthMs = endMs - onsetMs;
    return { coefficient: coefficient * lengthMs, information: information / lengthMs ** 2, gain };
  };
}

type Parts = readonly [Prepared | null, Prepared | null];

/** Both series may speak for one time only with one sign: a sensor that reads high is high hot and cold. */
function totalGain(hot: ChangeSize, cold: ChangeSize): number {
  return hot.degC * cold.degC >= 0 ? hot.gain + cold.gain : Math.max(hot.gain, cold.gain);
}

function searchAll(shape: Shape, [hot, cold]: Parts, trials: readonly number[], endMs: number): ChangeFit {
  const [hotAt, coldAt] = [sizesOf(hot, shape, endMs), sizesOf(cold, shape, endMs)];
  const gainAt = (place: number) => totalGain(hotAt(trials[place]!), coldAt(trials[place]!));
  const stride = Math.max(1, Math.floor(trials.length / COARSE_TRIALS));
  const gains = new Float64Array(trials.length).fill(NaN);
  for (let place = 0; place < trials.length; place += stride) gains[place] = gainAt(place);
  const coarse = placeOfLargest(gains, 0);
  const last = Math.min(coarse + stride, trials.length - 1);
  for (let place = Math.max(0, coarse - stride); place <= last; place++)
    if (Number.isNaN(gains[place]!)) gains[place] = gainAt(place);
  const best = placeOfLargest(gains, coarse);
  const near = trials.filter((_, place) => gains[place]! >= gains[best]! - CHI_SQUARE_95);
  const onsetMs = trials[best]!;
  return {
    shape,
    onsetMs,
    onsetLowMs: lowest(near),
    onsetHighMs: highest(near),
    hot: hot && hotAt(onsetMs),
    cold: cold && coldAt(onsetMs),
    gain: gains[best]!,
  };
}

/** @param first Stays where no other one is larger. NaN = not tried. */
function placeOfLargest(gains: Float64Array, first: number): number {
  let best = first;
  for (let place = 0; place < gains.length; place++) if (gains[place]! > gains[best]!) best = place;
  return best;
}
