import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import { assumedRoomOf } from './cold-hours.js';
import { timeConstantsOf } from './cool-downs.js';
import type { Open } from '../opens/opens.js';

/** A smaller fall to be expected is no more than a stop of the load makes (own choice). */
const LEAST_EXPECTED_DEG_C = 10;

/**
 * How far a zone had cooled when its reading came back, beside what it loses without heat in that time,
 * (T − room)·(1 − e^(−t/τ)): about 1 where the controller lost the reading and cut the heat, about 0 where the heat went
 * on, because only the record was lost or the output was held. Median over the opens long enough to tell.
 *
 * @returns NaN where none is, or where no cool-down tells the time constant. Never throws.
 */
export function cooledRatioOf(evidence: Evidence, zone: Zone, opens: readonly Open[]): number {
  const tauMs = timeConstantsOf(evidence)[zone.index]! * HOUR_MS;
  const roomDegC = assumedRoomOf(evidence);
  return median(
    opens.flatMap(({ startMs, endMs, beforeDegC, afterDegC }) => {
      const expectedDegC = (beforeDegC - roomDegC) * (1 - Math.exp((startMs - endMs) / tauMs));
      return expectedDegC >= LEAST_EXPECTED_DEG_C && Number.isFinite(afterDegC)
        ? [(beforeDegC - afterDegC) / expectedDegC]
        : [];
    }),
  );
}
