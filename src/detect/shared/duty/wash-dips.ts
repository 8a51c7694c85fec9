import { HOUR_MS } from '../../../model/time-units.js';
import type { Interval } from '../../../maths/intervals.js';
import { sizeOfColumn, sizeOfKnownColumn, type ChangeSize, type ChangeSeries } from './change-fit.js';
import type { Decay } from './trial-times.js';

/** Dips that follow the wash-downs from one of them on. Sizes are those right after a washing. */
export interface WashDips {
  readonly decayHours: number;
  readonly onsetMs: number;
  /** Wash-downs from then on. */
  readonly washCount: number;
  readonly hot: WashDip | null;
  readonly cold: WashDip | null;
  /** Squared standard deviations that the dips explain, both series together. */
  readonly gain: number;
}

/** One series: the size at the washing, and what of it the earliest look after one still shows. */
export interface WashDip extends ChangeSize {
  readonly seenDegC: number;
}

/** Fewer washings than this make no habit (own choice). */
const FEWEST_WASH_DOWNS = 3;
/** Looks in which this share of a dip is left are wet ones; dry ones have less than that (own choices). */
const WET_SHARE = 0.2;
const DRY_SHARE = 0.05;
/** Looks of either kind without which the two cannot be compared. */
const FEWEST_LOOKS = 3;
/** More onsets than this are not tried: every second, third … washing then (own choice). */
const MOST_ONSETS = 40;

/**
 * Fits one dip after every wash-down from some onset on, the same at each and fading with one time constant, to duty and
 * soaks. Looks before the onset and long after a washing are what it is measured against, so what a washing does to a
 * sound zone – heat that is gone sooner – is in them too, as far as the log reaches back before the fault.
 *
 * @returns null where too few wash-downs are known or too few looks lie behind them. Never throws.
 */
export function fitWashDips(
  washDowns: readonly Interval[],
  decays: readonly Decay[],
  hot: ChangeSeries | null,
  cold: ChangeSeries | null,
): WashDips | null {
  const fits = decays.flatMap(({ decayHours }) => {
    const since = bestStart(washDowns, decayHours, hot, cold);
    // Each series is weighed by its scatter about the dips, or large ones would hide themselves.
    return (since && dipsSince(since, decayHours, hot, cold, sizeOfKnownColumn)) ?? [];
  });
  return fits.reduce<WashDips | null>((best, fit) => (best === null || fit.gain > best.gain ? fit : best), null);
}

/** The wash-downs from the one on from which dips explain most; null where none explain anything. */
function bestStart(
  washDowns: readonly Interval[],
  decayHours: number,
  hot: ChangeSeries | null,
  cold: ChangeSeries | null,
): readonly Interval[] | null {
  const last = washDowns.length - FEWEST_WASH_DOWNS;
  const stride = Math.max(1, Math.ceil((last + 1) / MOST_ONSETS));
  let most = 0;
  let best: readonly Interval[] | null = null;
  for (let first = 0; first <= last; first += stride) {
    const since = washDowns.slice(first);
    const gain = dipsSince(since, decayHours, hot, cold, sizeOfColumn)?.gain ?? 0;
    if (gain > most) [most, best] = [gain, since];
  }
  return best;
}

type SizeOf = typeof sizeOfColumn;

function dipsSince(
  since: readonly Interval[],
  decayHours: number,
  hotSeries: ChangeSeries | null,
  coldSeries: ChangeSeries | null,
  sizeOf: SizeOf,
): WashDips | null {
  const [hot, cold] = [hotSeries, coldSeries].map((series) => series && dipIn(series, since, decayHours, sizeOf));
  const gain = [hot, cold].reduce((sum, dip) => sum + (dip ? Math.sign(-dip.degC) * dip.gain : 0), 0);
  if (!(gain > 0)) return null;
  return { decayHours, onsetMs: since[0]!.start, washCount: since.length, hot: hot ?? null, cold: cold ?? null, gain };
}

function dipIn(series: ChangeSeries, since: readonly Interval[], decayHours: number, sizeOf: SizeOf): WashDip | null {
  const column = leftAfterWash(series.timeMs, since, decayHours);
  const wet = column.filter((left) => left >= WET_SHARE);
  const dry = column.filter((left) => left <= DRY_SHARE);
  if (wet.length < FEWEST_LOOKS || dry.length < FEWEST_LOOKS) return null;
  const size = sizeOf(series, column);
  return { ...size, seenDegC: size.degC * wet.reduce((most, left) => Math.max(most, left), 0) };
}

/** Share of a dip that is left at each time, of the last washing before it; 0 before the first. */
function leftAfterWash(timeMs: Float64Array, since: readonly Interval[], decayHours: number): Float64Array {
  const left = new Float64Array(timeMs.length);
  let next = 0;
  timeMs.forEach((at, i) => {
    while (next < since.length && since[next]!.start <= at) next++;
    const washed = since[next - 1];
    if (washed) left[i] = Math.exp(-Math.max(0, at - washed.end) / (decayHours * HOUR_MS));
  });
  return left;
}
