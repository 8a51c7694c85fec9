import type { LogFile } from '../../model/log-file.js';
import type { RoledSeries } from '../columns/column-roles.js';
import { homeTimes } from '../times/home-times.js';
import { nearestRank } from '../columns/nearest-rank.js';
import { tagOfRow, type Series } from '../columns/series.js';
import type { FileShape } from '../layout/file-shape.js';

export type Timing = Pick<
  LogFile,
  'firstMs' | 'lastMs' | 'homeMs' | 'samplingMs' | 'order' | 'isChangeLogged' | 'holdMs' | 'silenceMs'
>;

/** A change log in which nothing at all is written for so long was not running (common practice). */
export const usualSilenceMs = 10 * 60_000;
/** A reading that has not moved for a day, by the least step its log writes, is no news of the zone any more (own choice). */
export const longestHoldMs = 24 * 3_600_000;

export type Span = Pick<Timing, 'firstMs' | 'lastMs' | 'homeMs' | 'order'> & {
  /** True when neighbours in the file are none in time, so that its rows as they stand say nothing of its step. */
  readonly isJumbled: boolean;
};

/** Sampled rows with their clock, as sampledClock gives it, and their values. */
export interface TimedRows {
  readonly shape: FileShape;
  readonly clock: readonly number[];
  readonly roled: readonly RoledSeries[];
}

/**
 * Tells order and span of a file from its sampled rows.
 *
 * @param isEndSampled False where the end of the file could not be looked at.
 */
export function findSpan({ shape, clock, roled }: TimedRows, isEndSampled: boolean): Span {
  const homeMs = homeTimes(
    clock,
    shape.rows.map((row) => row.stretch),
  );
  const firstMs = homeMs[0]?.fromMs ?? NaN;
  const lastMs = isEndSampled ? (homeMs.at(-1)?.toMs ?? NaN) : NaN;
  return { firstMs, lastMs, homeMs, ...findOrder(shape, clock, roled) };
}

/** Tells the step of a file, and whether it is a log of changes, from sampled rows in the order of their times. */
export function findStep(
  { shape, clock, roled }: TimedRows,
  holdMinutes: number | undefined,
): Pick<Timing, 'samplingMs' | 'isChangeLogged' | 'holdMs' | 'silenceMs'> {
  const gridMs = usualStep(
    stepsOf(
      clock,
      shape.rows.map((row) => row.stretch),
    ),
  );
  const change = findChangeLog(shape, roled, gridMs, holesOf(clock));
  const samplingMs = change.isChangeLogged || shape.layout === 'wide' ? gridMs : tagStep(roled, gridMs);
  const given = holdMinutes === undefined ? {} : { holdMs: holdMinutes * 60_000, silenceMs: holdMinutes * 60_000 };
  return { samplingMs, ...change, ...given };
}

/** Steps between neighbours of one stretch, zero ones left out, signs taken off. */
function stepsOf(clock: readonly number[], stretch: readonly number[]): number[] {
  const steps: number[] = [];
  for (let i = 1; i < clock.length; i++) {
    const step = Math.abs(clock[i]! - clock[i - 1]!);
    if (stretch[i] === stretch[i - 1] && step > 0) steps.push(step);
  }
  return steps;
}

/** The step that most rows have, where four in ten have it, else the middle one: gaps and odd rows do not move it. NaN for none. */
function usualStep(steps: readonly number[]): number {
  if (steps.length === 0) return NaN;
  const sorted = [...steps].sort((a, b) => a - b);
  const counts = new Map<number, number>();
  for (const step of sorted) counts.set(step, (counts.get(step) ?? 0) + 1);
  const [common, times] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a));
  return times >= 0.4 * sorted.length ? common : sorted[Math.floor(sorted.length / 2)]!;
}

function tagStep(roled: readonly RoledSeries[], gridMs: number): number {
  const steps = roled
    .filter((it) => it.role === 'reading')
    .map((it) => usualStep(stepsOf(it.series.clockMs, it.series.stretch)))
    .filter((step) => !Number.isNaN(step));
  return steps.length === 0 ? gridMs : steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)]!;
}

/** With fewer steps back than this the rows between them still follow each other (own choice). */
const jumbledShare = 0.1;

function findOrder(
  shape: FileShape,
  clock: readonly number[],
  roled: readonly RoledSeries[],
): Pick<Span, 'order' | 'isJumbled'> {
  let rises = 0;
  let falls = 0;
  let last = NaN;
  clock.forEach((ms) => {
    if (ms > last) rises++;
    if (ms < last) falls++;
    if (!Number.isNaN(ms)) last = ms;
  });
  const as = (order: LogFile['order']) => ({ order, isJumbled: order === 'mixed' && falls > jumbledShare * rises });
  if (falls === 0) return as('rising');
  if (falls > 5 * rises) return as('falling');
  if (shape.layout === 'long' && isByTag(shape, clock, roled)) return as('by-tag');
  // A clock set back once or twice is not a file out of order.
  return as(falls <= 2 || falls < 0.01 * rises ? 'rising' : 'mixed');
}

/** Every tag rises for itself, but for a clock set back once; the times begin anew when the tag changes. */
function isByTag(shape: FileShape, clock: readonly number[], roled: readonly RoledSeries[]): boolean {
  const tagOf = (i: number): string => tagOfRow(shape.rows[i]!.cells, shape);
  const lastOf = new Map<string | undefined, number>();
  let begins = 0;
  let others = 0;
  for (let i = 0; i < clock.length; i++) {
    const tag = tagOf(i);
    const isNewTag = i > 0 && tag !== tagOf(i - 1);
    const isOwnBack = clock[i]! < lastOf.get(tag)!;
    if (clock[i]! < clock[i - 1]!) {
      if (isNewTag && !isOwnBack) begins++;
      else if (isNewTag) others++;
    }
    lastOf.set(tag, clock[i]!);
  }
  const backsOf = ({ series: { clockMs } }: RoledSeries): number =>
    clockMs.filter((ms, i) => ms < clockMs[i - 1]!).length;
  return begins > 0 && others === 0 && roled.every((it) => backsOf(it) <= 1);
}

/** Steps so near to the usual one are the same, with the jitter of a scanner (own choice). */
const scanJitter = 0.25;

/** Tags that are read in turn come less often than rows do, each at a step of its own. */
function areScanned(roled: readonly RoledSeries[], gridMs: number): boolean {
  const readings = roled.filter((it) => it.role === 'reading');
  const isScanned = ({ series }: RoledSeries): boolean => {
    const steps = stepsOf(series.clockMs, series.stretch);
    const usualMs = usualStep(steps);
    const regular = steps.filter((step) => Math.abs(step - usualMs) <= scanJitter * usualMs);
    return usualMs > 1.5 * gridMs && regular.length >= mostRegular * steps.length;
  };
  return readings.length > 0 && readings.every(isScanned);
}

type ChangeFinding = Pick<Timing, 'isChangeLogged' | 'holdMs' | 'silenceMs'>;

/**
 * In a log of changes a value never stands twice within one step, and rows (long) or cells (wide) are missing where nothing
 * changed.
 */
function findChangeLog(
  shape: FileShape,
  roled: readonly RoledSeries[],
  gridMs: number,
  holes: readonly Hole[],
): ChangeFinding {
  const none = { isChangeLogged: false, holdMs: longestHoldMs, silenceMs: usualSilenceMs };
  if (Number.isNaN(gridMs) || (shape.layout === 'wide' && !blanksMeanUnchanged(roled))) return none;
  if (shape.layout === 'long' && areScanned(roled, gridMs)) return none;
  const all = roled
    .filter((it) => it.role === 'reading')
    .map((it) => pairsOf(withoutBlanks(it.series, shape), gridMs, holes));
  const sum = (pick: (pairs: Pairs) => number) => all.reduce((total, pairs) => total + pick(pairs), 0);
  const near = sum((pairs) => pairs.near);
  const far = sum((pairs) => pairs.far);
  const isChangeLogged =
    near + far >= 50 && sum((pairs) => pairs.nearEqual) <= 0.01 * near && far >= 0.005 * (near + far);
  return isChangeLogged ? { isChangeLogged, ...limitsOf(all, gridMs) } : none;
}

/** So many repeats of a value are no chance (own choice). */
const fewestRepeats = 3;

/**
 * A log that repeats every value after a while gives a sign of life of it: without one the value is lost. In a log that
 * never does, a value stands as long as others are written.
 */
function limitsOf(all: readonly Pairs[], gridMs: number): Pick<Timing, 'holdMs' | 'silenceMs'> {
  const repeatsMs = all.flatMap((pairs) => pairs.farEqualMs);
  const longestMs = Math.max(0, ...all.map((pairs) => pairs.longestMs));
  // Values that come back by chance stand for any time; where there is a sign of life none stands longer. The longest
  // repeats are holes of the whole log.
  const lifeMs = 1.1 * nearestRank(repeatsMs, 0.9) + gridMs;
  const hasSignOfLife = repeatsMs.length >= fewestRepeats && longestMs <= lifeMs;
  const seenMs = hasSignOfLife ? lifeMs : 3 * longestMs;
  const silenceMs = Math.max(usualSilenceMs, Math.round(seenMs / 1000) * 1000);
  return { holdMs: hasSignOfLife ? silenceMs : Math.max(longestHoldMs, silenceMs), silenceMs };
}

/** With fewer blanks than this nothing is gained by holding values (own choice). */
const leastBlankShare = 0.05;
/** Set points hardly ever change: in a log of changes they are blank much oftener than the readings (common practice). */
const setpointFill = 0.5;
/** Without set points to compare with, most readings must be blank. */
const leastBlankShareAlone = 0.5;
/** Values that come at one step only are a slower column, not changes. */
const mostRegular = 0.8;

/** Wide: whether a blank says "as before" rather than "no reading". */
function blanksMeanUnchanged(roled: readonly RoledSeries[]): boolean {
  const readings = roled.filter((it) => it.role === 'reading');
  // A column that is blank from end to end says nothing of the others.
  const setpoints = roled.filter((it) => it.role === 'setpoint' && it.series.filled > 0);
  const filled = fillOf(readings);
  const least = setpoints.length > 0 ? leastBlankShare : leastBlankShareAlone;
  if (readings.length === 0 || !(1 - filled >= least)) return false;
  if (setpoints.length > 0 && fillOf(setpoints) > setpointFill * filled) return false;
  const columns = roled.filter((it) => it.role !== 'ignored').map(({ series }) => series);
  const rowCount = readings[0]!.series.value.length;
  let emptyRows = 0;
  for (let i = 0; i < rowCount; i++) if (columns.every(({ value }) => Number.isNaN(value[i]))) emptyRows++;
  return emptyRows <= 0.01 * rowCount && readings.some((it) => !isRegular(it.series));
}

/** Share of cells that are not blank. */
function fillOf(roled: readonly RoledSeries[]): number {
  const cells = roled.reduce((sum, { series }) => sum + series.value.length, 0);
  return roled.reduce((sum, { series }) => sum + series.filled, 0) / cells;
}

function isRegular(series: Series): boolean {
  const { clockMs, stretch } = onlyNumbers(series);
  const steps = stepsOf(clockMs, stretch);
  return steps.filter((step) => step === usualStep(steps)).length >= mostRegular * steps.length;
}

function withoutBlanks(series: Series, shape: FileShape): Pick<Series, 'clockMs' | 'value' | 'stretch'> {
  return shape.layout === 'wide' ? onlyNumbers(series) : series;
}

function onlyNumbers({ clockMs, value, stretch }: Series): Pick<Series, 'clockMs' | 'value' | 'stretch'> {
  const isNumber = (_: number, i: number): boolean => !Number.isNaN(value[i]);
  return { clockMs: clockMs.filter(isNumber), value: value.filter(isNumber), stretch: stretch.filter(isNumber) };
}

interface Pairs {
  readonly near: number;
  readonly nearEqual: number;
  readonly far: number;
  readonly farEqualMs: readonly number[];
  /** The longest while in which this value stood and others were written. */
  readonly longestMs: number;
}

/** A while in which nothing at all was written. */
interface Hole {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A silence of one value says that it stood; a silence of all of them that nobody recorded. */
function holesOf(clock: readonly number[]): Hole[] {
  const rising = clock.filter((ms) => !Number.isNaN(ms)).sort((a, b) => a - b);
  return rising.flatMap((toMs, i) => {
    const fromMs = rising[i - 1] ?? toMs;
    return toMs - fromMs > usualSilenceMs ? [{ fromMs, toMs }] : [];
  });
}

function pairsOf(
  { clockMs, value, stretch }: Pick<Series, 'clockMs' | 'value' | 'stretch'>,
  gridMs: number,
  holes: readonly Hole[],
): Pairs {
  const pairs = { near: 0, nearEqual: 0, far: 0, farEqualMs: [] as number[], longestMs: 0 };
  for (let i = 1; i < clockMs.length; i++) {
    if (stretch[i] !== stretch[i - 1] || Number.isNaN(value[i]) || Number.isNaN(value[i - 1])) continue;
    const step = Math.abs(clockMs[i]! - clockMs[i - 1]!);
    if (step === 0) continue;
    const isEqual = value[i] === value[i - 1];
    if (step <= 1.5 * gridMs) {
      pairs.near++;
      if (isEqual) pairs.nearEqual++;
    } else {
      pairs.far++;
      const [fromMs, toMs] = [Math.min(clockMs[i - 1]!, clockMs[i]!), Math.max(clockMs[i - 1]!, clockMs[i]!)];
      const isRecorded = !holes.some((hole) => hole.fromMs >= fromMs && hole.toMs <= toMs);
      if (isRecorded && step > pairs.longestMs) pairs.longestMs = step;
      if (isEqual) pairs.farEqualMs.push(step);
    }
  }
  return pairs;
}
