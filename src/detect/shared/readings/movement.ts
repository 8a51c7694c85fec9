import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import type { Zone } from '../../../model/zone.js';
import { meanBetween } from '../../../maths/mean-between.js';
import { quantile } from '../../../maths/quantile.js';
import { resolutionDegCOf } from '../basics/sampling.js';
import { matesOf } from '../basics/mates.js';

/** What moved in a stretch of the digest. NaN = nothing there to tell. */
export interface Movement {
  readonly readingRangeDegC: number;
  /** Range of the means per period without the outer {@link OUTER_SHARE} on both sides. */
  readonly sustainedRangeDegC: number;
  /** Of the means per period, so a single sample does not count. */
  readonly outputRangePercent: number;
  readonly outputMeanPercent: number;
  readonly setpointRangeDegC: number;
}

/** The end of a heat-up, or one excursion, is no movement of a long stretch (own choice). */
const OUTER_SHARE = 0.02;

/** Movement of one zone from `startMs` to `endMs`; only whole periods inside count. Never throws. */
export function movementIn({ digest }: Evidence, zone: number, startMs: number, endMs: number): Movement {
  const held = digest.zones[zone]!;
  const first = Math.max(0, Math.ceil((startMs - digest.startMs) / digest.periodMs));
  const end = Math.min(digest.length, Math.floor((endMs - digest.startMs) / digest.periodMs));
  return {
    readingRangeDegC: readingRange(held, first, end),
    sustainedRangeDegC: sustainedRange(held.meanDegC, first, end),
    outputRangePercent: rangeOf(held.outputPercent, first, end),
    outputMeanPercent: meanBetween(held.outputPercent, first, end),
    setpointRangeDegC: rangeOf(held.setpointDegC, first, end),
  };
}

/** Other zones of the same machine; all other zones where the machine has only this one. */
export function peersOf({ zones }: Evidence, zone: Zone): readonly Zone[] {
  const mates = matesOf(zones, zone);
  return mates.length > 0 ? mates : zones.filter((z) => z.index !== zone.index);
}

/** True when a zone's reading shows at least its last digit moving. */
export function isMoving(movement: Movement, zone: Zone): boolean {
  return movement.readingRangeDegC > 0.5 * resolutionDegCOf(zone);
}

/**
 * True when a zone's reading moves by three steps or more. A peer that flickers between two or three steps of a coarse
 * log does not show that another zone, right between two of them, should have moved.
 *
 * @param stepDegC The coarser of the two zones' smallest steps: what the other one cannot show it need not have done.
 */
export function isMovingClearly(movement: Movement, stepDegC: number): boolean {
  return movement.sustainedRangeDegC > 2.5 * stepDegC;
}

function readingRange(zone: ZoneDigest, first: number, end: number): number {
  let min = Infinity;
  let max = -Infinity;
  for (let i = first; i < end; i++) {
    if (zone.minDegC[i]! < min) min = zone.minDegC[i]!;
    if (zone.maxDegC[i]! > max) max = zone.maxDegC[i]!;
  }
  return max >= min ? max - min : NaN;
}

function sustainedRange(means: Float32Array, first: number, end: number): number {
  const known = means.subarray(first, end).filter((mean) => !Number.isNaN(mean));
  return quantile(known, 1 - OUTER_SHARE) - quantile(known, OUTER_SHARE);
}

function rangeOf(values: Float32Array, first: number, end: number): number {
  let min = Infinity;
  let max = -Infinity;
  for (let i = first; i < end; i++) {
    if (values[i]! < min) min = values[i]!;
    if (values[i]! > max) max = values[i]!;
  }
  return max >= min ? max - min : NaN;
}
