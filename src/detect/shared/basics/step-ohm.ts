import type { Zone } from '../../../model/zone.js';
import { rtdOhmPerDegC } from '../../../sensors/rtd.js';
import { parseSensorType, sensorTypes } from '../../../sensors/sensor-types.js';

/**
 * Ohms in series that make a resistance sensor read `stepDegC` more at a temperature, by the slope of its table there.
 *
 * @returns NaN where the zone's sensor is not stated or no resistance sensor, or with four wires, which leads do not
 *   reach. Never throws.
 */
export function stepOhm(zone: Zone, atDegC: number, stepDegC: number): number {
  const id = zone.sensor === null || zone.wires === 4 ? undefined : parseSensorType(zone.sensor);
  const sensor = id && sensorTypes[id];
  if (sensor?.kind !== 'rtd') return NaN;
  const slope = rtdOhmPerDegC(sensor, atDegC);
  return slope.ok ? slope.ohmPerDegC * stepDegC : NaN;
}
