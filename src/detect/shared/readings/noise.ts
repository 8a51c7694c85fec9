import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { median } from '../../../maths/quantile.js';
import { refreshStepsDegC } from './held-readings.js';
import { resolutionDegCOf } from '../basics/sampling.js';

/** Rounding to steps of size q adds noise of q/√12 (uniform distribution). */
const ROUNDING_SD = 1 / Math.sqrt(12);

/**
 * The zone's usual noise, °C: median of its hours, never less than rounding makes, nor than the usual step of a reading
 * that is refreshed more slowly than it is logged.
 */
export function noiseDegCOf(evidence: Evidence, zone: Zone): number {
  const hours = evidence.episodes.get('scatter')?.[zone.index] ?? [];
  const usual = median(hours.map((hour) => hour.facts['noiseDegC']!));
  const rounding = ROUNDING_SD * resolutionDegCOf(zone);
  const refresh = refreshStepsDegC(evidence)[zone.index]!;
  return Math.max(Number.isNaN(usual) ? 0 : usual, rounding, refresh);
}

/** The watcher of steps asks for three ranges of eight calm readings (2.85 noise SDs each, normal range) … */
const STEP_NOISES = 3 * 2.85;
/** … and for three steps of the last digit. */
const STEP_DIGITS = 3;

/** The smallest step that shows in a calm reading of the zone, °C. */
export function smallestStepDegC(evidence: Evidence, zone: Zone): number {
  return Math.max(STEP_NOISES * noiseDegCOf(evidence, zone), STEP_DIGITS * resolutionDegCOf(zone));
}
