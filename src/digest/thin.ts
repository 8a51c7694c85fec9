import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import type { Trace } from '../model/findings.js';
import { meanBetween } from '../maths/mean-between.js';

/** A screen is some 1,400 pixels wide; more points than that cannot be told apart. */
export const mostBuckets = 1500;

/**
 * Thins one zone's digest to a trace for a chart. Each bucket keeps the lowest and the highest reading of all its
 * minutes, so no extreme is lost; output and running share are averages over the minutes that have them, the set point
 * is the last one.
 *
 * @param zone Columns of `grid.length` places.
 * @param most Largest number of buckets, 1 or more.
 * @returns Buckets of equal width, `timeMs` being the start of each; null where nothing was logged. Empty columns for
 *   an empty grid. Never throws, never changes its input.
 */
export function thinSeries(
  zone: ZoneDigest,
  grid: Pick<PlantDigest, 'startMs' | 'periodMs' | 'length'>,
  most: number = mostBuckets,
): Trace {
  const placesPerBucket = Math.max(1, Math.ceil(grid.length / Math.max(1, most)));
  const buckets = Math.ceil(grid.length / placesPerBucket);
  const fromPlace = (bucket: number): number => bucket * placesPerBucket;
  const eachBucket = <T>(value: (from: number, to: number) => T): T[] =>
    Array.from({ length: buckets }, (_, bucket) =>
      value(fromPlace(bucket), Math.min(grid.length, fromPlace(bucket + 1))),
    );
  return {
    timeMs: eachBucket((from) => grid.startMs + from * grid.periodMs),
    minDegC: eachBucket((from, to) => rounded(extreme(zone.minDegC, from, to, -1))),
    maxDegC: eachBucket((from, to) => rounded(extreme(zone.maxDegC, from, to, 1))),
    setpointDegC: eachBucket((from, to) => rounded(last(zone.setpointDegC, from, to))),
    outputPercent: eachBucket((from, to) => rounded(meanBetween(zone.outputPercent, from, to))),
    runningShare: eachBucket((from, to) => rounded(meanBetween(zone.runningShare, from, to))),
    badCount: eachBucket((from, to) => total(zone.badCount, from, to)),
  };
}

/** The largest (sign 1) or smallest (sign −1) number of the places; NaN when none holds one. */
function extreme(values: Float32Array, from: number, to: number, sign: 1 | -1): number {
  let best = NaN;
  for (let i = from; i < to; i++) {
    const value = values[i]!;
    if (!Number.isNaN(value) && !(sign * value <= sign * best)) best = value;
  }
  return best;
}

function last(values: Float32Array, from: number, to: number): number {
  for (let i = to - 1; i >= from; i--) if (!Number.isNaN(values[i]!)) return values[i]!;
  return NaN;
}

function total(counts: Uint16Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += counts[i]!;
  return sum;
}

/** Two decimals are finer than any logger writes, and shorter than a 32-bit number written out. */
function rounded(value: number): number | null {
  return Number.isNaN(value) ? null : Math.round(value * 100) / 100;
}
