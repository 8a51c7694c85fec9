import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { windowOf } from '../basics/judge-zones.js';
import { zoneToleranceDegC } from '../basics/tolerance.js';
import { errorOfChange } from './change-fit.js';
import { heldDegCOf } from './chart-points.js';
import { smallestHotChangeDegC, workingDegC } from './reading-error.js';
import type { ZoneChange } from './zone-changes.js';

/** How sure and how large a change must be to be told. */
export interface Visibility {
  /** Squared standard deviations that it must explain. */
  readonly leastGain: number;
  readonly smallestColdDegC: number;
  readonly smallestHotDegC: number;
}

/**
 * The smallest change of a reading that soaks or duty of a zone would show, in °C: for a ramp one over the whole log,
 * for a step one in the middle of the soaks, so what comes later must be larger.
 *
 * @returns Infinity where neither could show any. Never throws.
 */
export function smallestVisibleDegC(
  evidence: Evidence,
  change: ZoneChange,
  shape: 'step' | 'ramp',
  { leastGain, smallestColdDegC, smallestHotDegC }: Visibility,
): number {
  const hotDegC = smallestHotChangeDegC(change, shape, smallestHotDegC);
  const { cold } = change;
  if (!cold) return hotDegC;
  const { startMs, endMs } = windowOf(evidence);
  const middleMs = cold.timeMs[cold.timeMs.length >> 1]!;
  const errorDegC =
    shape === 'step' ? errorOfChange(cold, 'step', middleMs, endMs) : errorOfChange(cold, 1, startMs, endMs);
  return Math.min(hotDegC, Math.max(smallestColdDegC, Math.sqrt(leastGain) * errorDegC));
}

/** What a sensor of the zone may be off by its tolerance class where it works; cold where that is not known. */
export function workingToleranceDegC(evidence: Evidence, zone: Zone, change: ZoneChange): number {
  const byDutyDegC = workingDegC(evidence, change);
  const degC = Number.isNaN(byDutyDegC) ? (heldDegCOf(evidence)[zone.index] ?? NaN) : byDutyDegC;
  return zoneToleranceDegC(zone, Number.isNaN(degC) ? (change.soaks.at(-1)?.roomDegC ?? NaN) : degC);
}

/** Degrees as a reader takes them in: tenths below ten. */
export function degreesText(degC: number): string {
  return degC < 9.95 ? degC.toFixed(1) : degC.toFixed(0);
}
