import type { Symptom } from '../model/detector.js';
import type { OffsetBasis } from '../model/findings.js';
import { HOUR_MS } from '../model/time-units.js';
import { symptomsOf } from '../weigh/term.js';
import { likeliestFault } from '../weigh/verdict.js';
import type { Verdict } from '../weigh/weigh-plant.js';
import { isoOrNull } from './iso.js';
import { rounded } from './rounded.js';

export interface Drift {
  /** Reading minus truth at the window's end; null where no detector tells. */
  readonly offsetDegC: number | null;
  readonly offsetBasis: OffsetBasis | null;
  readonly leavesTolerance: string | null;
  readonly isMoving: boolean;
}

/** Detectors that tell the size of a reading error, the most telling first. */
const tellers = ['slow-drift', 'offset-step', 'lasting-step', 'cold-soak-offset', 'duty-shift'] as const;

/** The reading error at the end of the window, where the verdict is not a heater's. */
export function driftOf(verdict: Verdict): Drift {
  const told = tellers.flatMap((id) => symptomsOf(verdict.evidence, id))[0];
  if (!told || likeliestFault(verdict.probabilities) === 'heater') {
    return { offsetDegC: null, offsetBasis: null, leavesTolerance: null, isMoving: false };
  }
  const offset = told.facts['offsetDegC'] ?? told.facts['residualDegC'];
  return {
    offsetDegC: offset === undefined ? null : rounded(offset, 2),
    offsetBasis: offset === undefined ? null : basisOf(told, offset),
    leavesTolerance: isoOrNull(leavesToleranceMs(told)),
    isMoving: told.detector === 'slow-drift',
  };
}

/** Standard deviations of a normal spread that hold 9 of 10 cases, both sides together. */
const NINE_OF_TEN_SDS = 1.645;

/** A size by the duty alone came out 20 to 35 % too large where neighbours heat each other (measured on made plants). */
const DUTY_ALONE_ERROR_SHARE = 0.25;

/** Which way the size was got, and its limits. The method that counts is the first of `tellers` that speaks. */
function basisOf({ detector, facts }: Symptom, offsetDegC: number): OffsetBasis {
  const isDutyAlone = detector === 'duty-shift';
  const coldDegC = finiteOrNull(detector === 'cold-soak-offset' ? offsetDegC : facts['coldOffsetDegC']);
  const hotDegC = finiteOrNull(isDutyAlone ? offsetDegC : facts['hotOffsetDegC']);
  const errorDegC = isDutyAlone
    ? Math.hypot(facts['residualErrorDegC'] ?? 0, DUTY_ALONE_ERROR_SHARE * offsetDegC)
    : (facts['uncertaintyDegC'] ?? 0);
  const sideDegC = NINE_OF_TEN_SDS * errorDegC;
  // Seen only cold it may grow with temperature: then the working temperature has the far end of the interval.
  const grownDegC = finiteOrNull(facts['grownOffsetDegC']) ?? offsetDegC;
  // … which is as much less sure there as it is larger.
  const grownSideDegC = Math.abs((sideDegC * grownDegC) / (offsetDegC || 1));
  return {
    detector,
    from: basisFrom(detector, coldDegC, hotDegC),
    lowDegC: rounded(Math.min(offsetDegC - sideDegC, grownDegC - grownSideDegC), 2),
    highDegC: rounded(Math.max(offsetDegC + sideDegC, grownDegC + grownSideDegC), 2),
    coldDegC,
    hotDegC,
  };
}

function basisFrom(detector: string, coldDegC: number | null, hotDegC: number | null): OffsetBasis['from'] {
  if (detector === 'lasting-step') return 'jump';
  if (coldDegC === null) return 'duty';
  return hotDegC === null ? 'soaks' : 'both';
}

function finiteOrNull(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : rounded(value, 2);
}

function leavesToleranceMs({ endMs, facts }: Symptom): number {
  const hours = facts['leavesToleranceHours'];
  return hours === undefined || hours > MOST_HOURS_AHEAD ? NaN : endMs + hours * HOUR_MS;
}

/** A line drawn on for more than a year says nothing. */
const MOST_HOURS_AHEAD = 365 * 24;
