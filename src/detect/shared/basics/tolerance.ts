import type { Zone } from '../../../model/zone.js';
import { parseSensorType, sensorTypes } from '../../../sensors/sensor-types.js';
import { parseToleranceClass, toleranceDegC, usualClass } from '../../../sensors/tolerance.js';

/** Sensor taken where none is stated: the usual one on heat-seal bars and platens (common practice). */
const USUAL_SENSOR = 'pt100';

/**
 * How far a sensor of this zone may be off at a temperature by its tolerance class, °C either way; class B or standard
 * where no class is stated. Falls back to the usual sensor where the class has no figure for this one.
 */
export function zoneToleranceDegC(zone: Zone, degC: number): number {
  const spec = sensorTypes[parseSensorType(zone.sensor ?? '') ?? USUAL_SENSOR];
  const stated = zone.toleranceClass === null ? undefined : parseToleranceClass(zone.toleranceClass);
  for (const [sensor, toleranceClass] of [
    [spec, stated ?? usualClass(spec)],
    [sensorTypes[USUAL_SENSOR], 'B'],
  ] as const) {
    const answer = toleranceClass && toleranceDegC(sensor, toleranceClass, Math.max(0, degC));
    if (answer && 'toleranceDegC' in answer) return answer.toleranceDegC;
  }
  return NaN;
}
