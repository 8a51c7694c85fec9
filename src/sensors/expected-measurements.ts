import type { Check } from '../model/check.js';
import { cautionChecks } from './checks-caution.js';
import { currentChecks } from './checks-current.js';
import { rtdChecks } from './checks-rtd.js';
import { thermocoupleChecks } from './checks-thermocouple.js';
import { planOf, roomSource, type MeasureOptions } from './measure-plan.js';
import { sensorTypes, type SensorId, type SensorSpec } from './sensor-types.js';

/**
 * What a fitter should do and measure on one sensor, in order, with the values to expect and what each result means.
 *
 * The lockout caution comes first, then the sensor at its own connector, the cable at the cabinet, the input last.
 *
 * @returns Plain data for findings and report; at least the caution. Never throws: a temperature off the sensor's
 *   table leaves that value out. Values from the sensor's own table; order and meanings are common practice.
 */
export function expectedMeasurements(sensor: SensorSpec | SensorId, options: MeasureOptions = {}): readonly Check[] {
  const spec = typeof sensor === 'string' ? sensorTypes[sensor] : sensor;
  const plan = planOf(spec, options);
  const cautions = cautionChecks(spec, plan.roomDegC, roomSource(options));
  if (spec.kind === 'rtd') return [...cautions, ...rtdChecks(spec, plan)];
  if (spec.kind === 'thermocouple') return [...cautions, ...thermocoupleChecks(spec, plan)];
  return [...cautions, ...currentChecks(plan)];
}
