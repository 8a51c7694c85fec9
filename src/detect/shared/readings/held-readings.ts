import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { resolutionDegCOf } from '../basics/sampling.js';

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
    const changes = changesOf(evidence.digest.zones[zone.index]!);
    const moved = changes.filter((degC) => degC > 0);
    const neighbours = changes.filter((degC, i) => degC > 0 && changes[i - 1]! > 0).length;
    if (neighbours > LARGEST_NEIGHBOUR_SHARE * moved.length) return 0;
    if (moved.length < FEWEST_CHANGES || moved.length > (1 - SMALLEST_STILL_SHARE) * changes.length) return 0;
    // A change of 0.9 digits is one digit after °F and float arithmetic.
    if (quantile(moved, 0.5) < (SMALLEST_CHANGE_STEPS - 0.5) * resolutionDegCOf(zone)) return 0;
    return quantile(moved, 0.9);
  }),
);

/** Change of the reading from the end of each period to the end of the next, where both have one. */
function changesOf({ lastDegC, minDegC, maxDegC }: ZoneDigest): number[] {
  const changes: number[] = [];
  for (let i = 1; i < lastDegC.length; i++) {
    const change = Math.max(Math.abs(lastDegC[i]! - lastDegC[i - 1]!), maxDegC[i]! - minDegC[i]!);
    if (!Number.isNaN(change)) changes.push(change);
  }
  return changes;
}
