import type { Symptom } from '../model/detector.js';
import { symptomsOf } from '../weigh/term.js';
import { likeliestFault } from '../weigh/verdict.js';
import type { Verdict } from '../weigh/weigh-plant.js';
import { isoOrNull } from './iso.js';
import { rounded } from './rounded.js';

export interface Drift {
  /** Reading minus truth at the window's end; null where no detector tells. */
  readonly offsetDegC: number | null;
  readonly leavesTolerance: string | null;
  readonly isMoving: boolean;
}

/** Detectors that tell the size of a reading error, the most telling first. */
const tellers = ['slow-drift', 'offset-step', 'cold-soak-offset', 'duty-shift'] as const;

/** The reading error at the end of the window, where the verdict is not a heater's. */
export function driftOf(verdict: Verdict): Drift {
  const told = tellers.flatMap((id) => symptomsOf(verdict.evidence, id))[0];
  if (!told || likeliestFault(verdict.probabilities) === 'heater') {
    return { offsetDegC: null, leavesTolerance: null, isMoving: false };
  }
  const offset = told.facts['offsetDegC'] ?? told.facts['residualDegC'];
  return {
    offsetDegC: offset === undefined ? null : rounded(offset, 2),
    leavesTolerance: isoOrNull(leavesToleranceMs(told)),
    isMoving: told.detector === 'slow-drift',
  };
}

function leavesToleranceMs({ endMs, facts }: Symptom): number {
  const hours = facts['leavesToleranceHours'];
  return hours === undefined || hours > MOST_HOURS_AHEAD ? NaN : endMs + hours * 3_600_000;
}

/** A line drawn on for more than a year says nothing. */
const MOST_HOURS_AHEAD = 365 * 24;
