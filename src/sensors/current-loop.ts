import { refused, say, type Answer } from './answer.js';

/** Temperatures at 4 and at 20 mA, as set on the transmitter and on the card. */
export interface CurrentSpan {
  readonly lowDegC: number;
  readonly highDegC: number;
}

/** NAMUR NE 43: what a current says about the signal. */
export type CurrentState = 'failure-low' | 'below-range' | 'measuring' | 'above-range' | 'failure-high';

/** NAMUR NE 43 (2003, 2021): measuring from 3.8 to 20.5 mA; failure at or below 3.6 and at or above 21 mA. */
export const namurLimits = { failureLowMa: 3.6, lowMa: 3.8, highMa: 20.5, failureHighMa: 21 } as const;

/** State of a 4–20 mA signal by NAMUR NE 43. NaN counts as failure-low: there is no current to be seen. */
export function currentState(currentMa: number): CurrentState {
  if (!(currentMa > namurLimits.failureLowMa)) return 'failure-low';
  if (currentMa >= namurLimits.failureHighMa) return 'failure-high';
  if (currentMa < namurLimits.lowMa) return 'below-range';
  return currentMa > namurLimits.highMa ? 'above-range' : 'measuring';
}

/** Temperature for a current; refused outside the measuring range of NE 43 or with an empty span. */
export function currentDegC(currentMa: number, span: CurrentSpan): Answer<{ readonly degC: number }> {
  if (!isSpan(span)) return emptySpan();
  const state = currentState(currentMa);
  if (state === 'measuring') {
    return { ok: true, degC: span.lowDegC + ((span.highDegC - span.lowDegC) * (currentMa - 4)) / 16 };
  }
  const side = state === 'failure-low' || state === 'below-range' ? 'below' : 'above';
  const end = side === 'below' ? namurLimits.lowMa : namurLimits.highMa;
  const says = `${say(currentMa, 2)} mA is ${side} ${end} mA, where NAMUR NE 43 ends the measuring range.`;
  return refused(side === 'below' ? 'below-range' : 'above-range', says);
}

/** Current for a temperature; refused where it would leave the measuring range of NE 43, or with an empty span. */
export function currentMa(degC: number, span: CurrentSpan): Answer<{ readonly currentMa: number }> {
  if (!Number.isFinite(degC)) return refused('not-a-number', 'The temperature for the transmitter is not a number.');
  if (!isSpan(span)) return emptySpan();
  const current = 4 + (16 * (degC - span.lowDegC)) / (span.highDegC - span.lowDegC);
  if (currentState(current) === 'measuring') return { ok: true, currentMa: current };
  const range = `${say(span.lowDegC, 1)} to ${say(span.highDegC, 1)} °C`;
  const says = `${say(degC, 1)} °C lies outside the transmitter's span of ${range}.`;
  return refused(degC < span.lowDegC === span.highDegC > span.lowDegC ? 'below-range' : 'above-range', says);
}

function isSpan({ lowDegC, highDegC }: CurrentSpan): boolean {
  return Number.isFinite(lowDegC) && Number.isFinite(highDegC) && lowDegC !== highDegC;
}

function emptySpan(): Answer<never> {
  return refused('no-span', 'The span needs two different temperatures, at 4 mA and at 20 mA.');
}
