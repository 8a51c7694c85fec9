import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { placesPerSampleOf, resolutionDegCOf } from '../basics/sampling.js';

/** A live input moves its last digit in more than one minute of five, unless it rests in coarse digits (own choice). */
const SMALLEST_STILL_SHARE = 0.8;
/** Changes of a resting coarse input are one digit; of a held one they are whatever built up meanwhile (own choice). */
const SMALLEST_CHANGE_STEPS = 5;
/**
 * Between two refreshes lies at least one period without change. A log that holds a value until it leaves a dead band
 * changes in every period while the zone heats up, and of such a log a step well beyond the band is real (own choice).
 */
const LARGEST_NEIGHBOUR_SHARE = 0.05;
/** Fewer changes tell nothing. */
const FEWEST_CHANGES = 20;

/**
 * Usual size of the steps of a reading that is refreshed more slowly than it is logged: it stands still to the last
 * digit, then moves by many digits at once. Such a step is the refresh, not a fault. A gateway that asks every quarter
 * of an hour and a log of every minute make one.
 *
 * @returns By zone index, °C: nine of ten refreshes are smaller; 0 for a live reading. Never throws.
 */
export const refreshStepsDegC = oncePer((evidence: Evidence): readonly number[] =>
  evidence.zones.map((zone) => {
    const { moved, neighbourCount, periodCount } = changesOf(
      evidence.digest.zones[zone.index]!,
      Math.ceil(placesPerSampleOf(zone, evidence.digest.periodMs)),
    );
    if (neighbourCount > LARGEST_NEIGHBOUR_SHARE * moved.length) return 0;
    if (moved.length < FEWEST_CHANGES || moved.length > (1 - SMALLEST_STILL_SHARE) * periodCount) return 0;
    // A change of 0.9 digits is one digit after °F and float arithmetic.
    if (quantile(moved, 0.5) < (SMALLEST_CHANGE_STEPS - 0.5) * resolutionDegCOf(zone)) return 0;
    return quantile(moved, 0.9);
  }),
);

interface Changes {
  /** Changes from the end of a period to the end of the next that are above 0, °C, in time order. */
  readonly moved: Float64Array;
  /** Those of `moved` right behind another one. */
  readonly neighbourCount: number;
  /** Periods whose change is known, 0 or not: they have a reading, and so has the period of the sample before. */
  readonly periodCount: number;
}

/** @param apart Places from one reading to the next: slow logs leave those between empty. */
function changesOf({ lastDegC, minDegC, maxDegC }: ZoneDigest, apart: number): Changes {
  const moved = new Float64Array(lastDegC.length);
  let movedCount = 0;
  let neighbourCount = 0;
  let periodCount = 0;
  let hadMoved = false;
  let before = -1;
  for (let i = 0; i < lastDegC.length; i++) {
    if (Number.isNaN(lastDegC[i]!)) continue;
    const last = before >= i - apart ? lastDegC[before]! : NaN;
    before = i;
    const changeDegC = Math.max(Math.abs(lastDegC[i]! - last), maxDegC[i]! - minDegC[i]!);
    if (Number.isNaN(changeDegC)) continue;
    periodCount++;
    const hasMoved = changeDegC > 0;
    if (hasMoved) moved[movedCount++] = changeDegC;
    if (hasMoved && hadMoved) neighbourCount++;
    hadMoved = hasMoved;
  }
  return { moved: moved.subarray(0, movedCount), neighbourCount, periodCount };
}
