import type { ExpectedValue } from '../../model/check.js';
import { numberText, ohmText, withUnit } from '../text/numbers.js';
import { difference, level, phrase, plain, type Phrase } from '../text/phrase.js';

/** "at the set point, 182.0 °C". */
export function conditionText({ condition, atDegC }: ExpectedValue): Phrase {
  if (condition === 'any' || atDegC === null) return [];
  return condition === 'room' ? phrase`cold, at ${level(atDegC)}` : phrase`hot, at ${level(atDegC)}`;
}

/** What the meter should show, with its limits: "108.2 Ω (107.2 to 109.1)". */
export function expectedText(value: ExpectedValue): Phrase {
  switch (value.quantity) {
    case 'resistance':
      return plain(bandText(value.expectedOhm, value.lowOhm, value.highOhm, 'Ω', 1));
    case 'voltage':
      return phrase`${bandText(value.expectedMv, value.lowMv, value.highMv, 'mV', 2)}, terminals at ${level(value.referenceDegC)}`;
    case 'current':
      return plain(bandText(value.expectedMa, value.lowMa, value.highMa, 'mA', 2));
    case 'insulation':
      return plain(`OL, or more than ${ohmText(value.leastOhm)}`);
    case 'reading':
      return phrase`controller shows ${level(value.expectedDegC)} ± ${difference((value.highDegC - value.lowDegC) / 2)}${appliedText(value)}`;
    case 'heater-current':
      return plain(bandText(value.expectedA, value.lowA, value.highA, 'A', 2));
    case 'supply-voltage':
      return plain(bandText(value.expectedV, value.lowV, value.highV, 'V', 0));
    case 'stated':
      return plain(value.says);
  }
}

/** Whether there is a value to hold a meter against; false for what is only noted down. */
export function isComparable(value: ExpectedValue): boolean {
  return (
    value.quantity !== 'resistance' || value.expectedOhm !== null || value.highOhm !== null || (value.lowOhm ?? 0) > 0
  );
}

function appliedText({ appliedOhm, appliedMv }: { readonly appliedOhm?: number; readonly appliedMv?: number }): string {
  if (appliedOhm !== undefined) return ` with ${withUnit(appliedOhm, 'Ω', 1)} on the input`;
  return appliedMv === undefined ? '' : ` with ${withUnit(appliedMv, 'mV', 2)} on the input`;
}

function bandText(
  expected: number | null,
  low: number | null,
  high: number | null,
  unit: string,
  digits: number,
): string {
  const band = limitsText(low, high, unit, digits);
  if (expected === null) return band === '' ? 'note it down' : band;
  const value = withUnit(expected, unit, digits);
  return low === null || high === null ? value : `${value} (${numberText(low, digits)} to ${numberText(high, digits)})`;
}

function limitsText(low: number | null, high: number | null, unit: string, digits: number): string {
  if (high !== null && (low === null || low === 0)) return `less than ${withUnit(high, unit, digits)}`;
  if (high !== null) return `${numberText(low!, digits)} to ${withUnit(high, unit, digits)}`;
  return low === null || low === 0 ? '' : `more than ${withUnit(low, unit, digits)}`;
}
