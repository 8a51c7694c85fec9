/** Why a function of sensor physics gives no number. Codes are stable; the sentences may be improved. */
export type RefusedCode =
  | 'not-a-number'
  | 'below-range'
  | 'above-range'
  | 'no-class'
  | 'outside-class'
  | 'no-span'
  | 'no-such-wire'
  | 'wrong-direction';

/** No number, and one sentence that says why. Nothing in this folder extrapolates silently. */
export interface Refused {
  readonly ok: false;
  readonly code: RefusedCode;
  readonly says: string;
  /**
   * Only for a platinum element below its table: where the equation, carried on towards 0 ohm, would land.
   * A marker of "short" or "wrong element", never a temperature.
   */
  readonly shortMarkerDegC?: number;
}

/** A number with its unit in its name, or a sentence why there is none. */
export type Answer<Value> = ({ readonly ok: true } & Value) | Refused;

/** Builds a refusal. */
export function refused(code: RefusedCode, says: string): Refused {
  return { ok: false, code, says };
}

/** Refuses what lies outside [low, high] or is no number; undefined when all is well. */
export function outsideDegC(what: string, degC: number, lowDegC: number, highDegC: number): Refused | undefined {
  if (!Number.isFinite(degC)) return refused('not-a-number', `The temperature for ${what} is not a number.`);
  if (degC < lowDegC) {
    return refused(
      'below-range',
      `${say(degC, 1)} °C is below ${say(lowDegC)} °C, where the table for ${what} begins.`,
    );
  }
  if (degC > highDegC) {
    return refused('above-range', `${say(degC, 1)} °C is above ${say(highDegC)} °C, where the table for ${what} ends.`);
  }
  return undefined;
}

/**
 * A number for a sentence: at most `digits` decimals, a true minus sign, never "-0".
 * Never throws; NaN gives "unknown".
 */
export function say(value: number, digits = 0): string {
  if (Number.isNaN(value)) return 'unknown';
  if (!Number.isFinite(value)) return value > 0 ? 'no limit' : '−no limit';
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
