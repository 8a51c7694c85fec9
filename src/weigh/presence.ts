import type { FaultSpan } from './verdict.js';
import { factOf, symptomsOf, type ZoneEvidence } from './term.js';

/** Whether a fault would show itself to someone who goes and measures. */
export interface Presence {
  /** Chance that it shows while a fitter measures at rest, 0 to 1. */
  readonly showsShare: number;
  /** True when the log ends with the fault put right: then people know more than a meter. */
  readonly isRepaired: boolean;
}

/** A fault that comes and goes shows itself in about one callout of five (common practice, no source). */
const INTERMITTENT_SHARE = 0.2;

/** How a zone's fault stands at the end of the log. */
export function presenceOf(evidence: ZoneEvidence, span: FaultSpan): Presence {
  if (!Number.isNaN(span.fixedMs)) return { showsShare: 0, isRepaired: true };
  return { showsShare: comesAndGoes(evidence) ? INTERMITTENT_SHARE : 1, isRepaired: false };
}

function comesAndGoes(evidence: ZoneEvidence): boolean {
  const opens = symptomsOf(evidence, 'sensor-opens').length > 0;
  const isLong = factOf(evidence, 'sensor-opens', 'longCount') >= 1;
  return (opens && !isLong) || (!opens && symptomsOf(evidence, 'returning-steps').length > 0);
}
