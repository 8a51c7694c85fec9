import type { Check, CheckOutcome, ExpectedValue } from '../model/check.js';

/** Two equal leads of one cable differ by less than this; more is a bad contact. Common practice. */
export const unevenLeadOhm = 0.2;

/** The parts that most checks share; what a check adds comes after it. */
export function measure(
  id: string,
  where: Check['where'],
  between: readonly string[],
): Omit<Check, 'says' | 'expected' | 'outcomes'> {
  return { id, kind: 'measure', where, power: 'locked-out', between, source: 'common practice' };
}

/** What a measured value says, and to which cause it points; null = to none. */
export function outcome(result: CheckOutcome['result'], says: string, points: CheckOutcome['points']): CheckOutcome {
  return { result, says, points };
}

/** A 5-band decade box or a 0.1 % resistor and a good input come within this. Common practice. */
const inputBandDegC = 1;

/** What the controller should show, with a known signal on its input or the input linked. */
export function readingValue(degC: number, applied: { appliedOhm?: number; appliedMv?: number } = {}): ExpectedValue {
  const lowDegC = degC - inputBandDegC;
  return {
    quantity: 'reading',
    condition: 'any',
    atDegC: null,
    expectedDegC: degC,
    lowDegC,
    highDegC: degC + inputBandDegC,
    ...applied,
  };
}
