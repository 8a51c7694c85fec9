import { refused, type Answer } from './answer.js';
import { rtdOhm } from './rtd.js';
import type { Wires } from './rtd-wiring.js';
import type { RtdSpec } from './sensor-types.js';

/** More than this in one contact is a wire about to open rather than a loose terminal. Common practice, no source. */
const largestContactOhm = 50;

/** Whether ohms in series or in parallel make sense as the cause, as a stable code. */
export type OhmReason =
  | 'fits-both-leads'
  | 'fits-lead-1'
  | 'fits-lead-2'
  | 'fits-leak'
  | 'series-cannot-read-low'
  | 'leak-cannot-read-high'
  | 'four-wire-cancels-leads'
  | 'more-than-a-contact'
  | 'nearly-a-short'
  | 'no-offset';

export interface OhmJudgement {
  readonly sensible: boolean;
  readonly reason: OhmReason;
}

/**
 * Ohms to be added in series to the element so that it reads `readingDegC` at `trueDegC`: exact, R(reading) − R(true).
 *
 * @returns Signed ohm: negative means resistance would have to be taken away. Refused outside the element's table.
 */
export function seriesOhmFor(
  sensor: RtdSpec,
  trueDegC: number,
  readingDegC: number,
): Answer<{ readonly seriesOhm: number }> {
  const element = rtdOhm(sensor, trueDegC);
  if (!element.ok) return element;
  const seen = rtdOhm(sensor, readingDegC);
  return seen.ok ? { ok: true, seriesOhm: seen.ohm - element.ohm } : seen;
}

/**
 * Ohms in parallel to the element so that it reads `readingDegC` at `trueDegC`: exact, R·R′ / (R − R′).
 *
 * @returns ohm; refused (`wrong-direction`) unless the reading is below the truth, and outside the element's table.
 */
export function shuntOhmFor(
  sensor: RtdSpec,
  trueDegC: number,
  readingDegC: number,
): Answer<{ readonly shuntOhm: number }> {
  const element = rtdOhm(sensor, trueDegC);
  if (!element.ok) return element;
  const seen = rtdOhm(sensor, readingDegC);
  if (!seen.ok) return seen;
  if (seen.ohm >= element.ohm) {
    return refused('wrong-direction', 'A path in parallel can only make an RTD read low, never high.');
  }
  return { ok: true, shuntOhm: (element.ohm * seen.ohm) / (element.ohm - seen.ohm) };
}

/**
 * Whether signed ohms in series make sense for this wiring.
 *
 * Two leads can only add; with three, lead 1 (alone) adds and lead 2 (compensating) takes off; with four, leads do
 * not count. Source: circuit arithmetic; the size limit is common practice.
 */
export function judgeSeries(wires: Wires, seriesOhm: number): OhmJudgement {
  if (seriesOhm === 0) return { sensible: false, reason: 'no-offset' };
  if (wires === 4) return { sensible: false, reason: 'four-wire-cancels-leads' };
  if (wires === 2 && seriesOhm < 0) return { sensible: false, reason: 'series-cannot-read-low' };
  if (Math.abs(seriesOhm) > largestContactOhm) return { sensible: false, reason: 'more-than-a-contact' };
  if (wires === 2) return { sensible: true, reason: 'fits-both-leads' };
  return { sensible: true, reason: seriesOhm > 0 ? 'fits-lead-1' : 'fits-lead-2' };
}

/**
 * Whether a parallel path of this size makes sense: a path smaller than the element at 0 °C is a short in all but
 * name. Common practice.
 */
export function judgeShunt(sensor: RtdSpec, shuntOhm: number): OhmJudgement {
  if (shuntOhm < sensor.zeroOhm) return { sensible: false, reason: 'nearly-a-short' };
  return { sensible: true, reason: 'fits-leak' };
}
