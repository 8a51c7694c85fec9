import type { Findings, ZoneFinding } from '../../model/findings.js';
import type { Clock } from '../text/clock.js';

/** What every screen is made from. */
export interface Context {
  readonly findings: Findings;
  readonly clock: Clock;
  /** Zones in the order of their rank. A zone's place in it is its address in the page. */
  readonly zones: readonly ZoneFinding[];
}

/** Addresses are numbers, so that no name from a log can become part of one. */
export function zoneAddress(index: number): string {
  return `zone-${index + 1}`;
}
