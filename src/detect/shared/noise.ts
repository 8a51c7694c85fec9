import type { Evidence } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { median } from '../../maths/quantile.js';
import { resolutionDegCOf } from './sampling.js';

/** Rounding to steps of size q adds noise of q/√12 (uniform distribution). */
const ROUNDING_SD = 1 / Math.sqrt(12);

/** The zone's usual noise, °C: median of its hours, never less than rounding makes. */
export function noiseDegCOf(evidence: Evidence, zone: Zone): number {
  const hours = evidence.episodes.get('scatter')?.[zone.index] ?? [];
  const usual = median(hours.map((hour) => hour.facts['noiseDegC']!));
  const rounding = ROUNDING_SD * resolutionDegCOf(zone);
  return Number.isNaN(usual) ? rounding : Math.max(usual, rounding);
}
