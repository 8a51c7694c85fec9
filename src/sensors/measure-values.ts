import type { CheckCondition, ExpectedValue } from '../model/check.js';
import { rtdOhm, rtdOhmPerDegC } from './rtd.js';
import type { RtdSpec, ThermocoupleSpec } from './sensor-types.js';
import { emfMvPerDegC, terminalMv } from './thermocouple.js';
import { toleranceDegC, type ToleranceClass } from './tolerance.js';

/** A state to measure in: the temperature of the tip and how well it is known. */
export interface MeasureState {
  readonly condition: CheckCondition;
  readonly atDegC: number;
  readonly plusMinusDegC: number;
}

/** Cable between sensor and cabinet; null = not known. */
export type CableOhm = number | null;

/**
 * The element's resistance to expect, with or without cable: the class's tolerance, widened by how well the
 * temperature is known. Empty when the temperature is off the table.
 */
export function elementValue(
  sensor: RtdSpec,
  { condition, atDegC, plusMinusDegC }: MeasureState,
  toleranceClass: ToleranceClass | undefined,
  cableOhm: CableOhm,
): ExpectedValue[] {
  const element = rtdOhm(sensor, atDegC);
  const slope = rtdOhmPerDegC(sensor, atDegC);
  if (!element.ok || !slope.ok) return [];
  const tolerance = toleranceClass ? toleranceDegC(sensor, toleranceClass, atDegC) : undefined;
  const ownDegC = tolerance?.ok ? tolerance.toleranceDegC : null;
  const sideOhm = ((ownDegC ?? 0) + plusMinusDegC) * slope.ohmPerDegC;
  const expectedOhm = element.ohm + (cableOhm ?? 0);
  return [
    {
      quantity: 'resistance',
      condition,
      atDegC,
      expectedOhm,
      lowOhm: expectedOhm - sideOhm,
      highOhm: expectedOhm + sideOhm,
      toleranceOhm: ownDegC === null ? null : ownDegC * slope.ohmPerDegC,
      toleranceDegC: ownDegC,
      ohmPerDegC: slope.ohmPerDegC,
      cableOhm,
    },
  ];
}

/** A resistance that does not depend on the tip: a loop of leads, or a thermocouple's wire. null = no figure. */
export function loopValue(expectedOhm: number | null, lowOhm: number | null, highOhm: number | null): ExpectedValue {
  return {
    quantity: 'resistance',
    condition: 'any',
    atDegC: null,
    expectedOhm,
    lowOhm,
    highOhm,
    toleranceOhm: null,
    toleranceDegC: null,
    ohmPerDegC: null,
    cableOhm: expectedOhm,
  };
}

/** A thermocouple's voltage to expect on terminals of a stated temperature. Empty when off the table. */
export function voltageValue(
  sensor: ThermocoupleSpec,
  { condition, atDegC, plusMinusDegC }: MeasureState,
  toleranceClass: ToleranceClass | undefined,
  referenceDegC: number,
): ExpectedValue[] {
  const voltage = terminalMv(sensor.letter, atDegC, referenceDegC);
  const slope = emfMvPerDegC(sensor.letter, atDegC);
  if (!voltage.ok || !slope.ok) return [];
  const tolerance = toleranceClass ? toleranceDegC(sensor, toleranceClass, atDegC) : undefined;
  const ownDegC = tolerance?.ok ? tolerance.toleranceDegC : null;
  const sideMv = ((ownDegC ?? 0) + plusMinusDegC) * slope.mvPerDegC;
  return [
    {
      quantity: 'voltage',
      condition,
      atDegC,
      expectedMv: voltage.mV,
      lowMv: voltage.mV - sideMv,
      highMv: voltage.mV + sideMv,
      toleranceDegC: ownDegC,
      mvPerDegC: slope.mvPerDegC,
      referenceDegC,
    },
  ];
}

/** IEC 60751:2008 6.3.1 asks 100 MΩ at ambient, from memory; general trade texts agree. */
const leastInsulationOhm = 100e6;

export const insulationValue: ExpectedValue = {
  quantity: 'insulation',
  condition: 'room',
  atDegC: null,
  leastOhm: leastInsulationOhm,
};
