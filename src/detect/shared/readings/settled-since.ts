import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { zoneState, zoneStatesOf } from './zone-state.js';

/**
 * Hours in which a zone was held at a temperature after a moment: a part that failed for good cannot do that, so it was
 * put right. Never throws.
 */
export function settledHoursSince(evidence: Evidence, zone: Zone, timeMs: number): number {
  const { startMs, periodMs } = evidence.digest;
  const states = zoneStatesOf(evidence)[zone.index]!;
  let places = 0;
  for (let i = Math.max(0, Math.ceil((timeMs - startMs) / periodMs)); i < states.length; i++) {
    if (states[i] === zoneState.settled) places++;
  }
  return (places * periodMs) / HOUR_MS;
}
