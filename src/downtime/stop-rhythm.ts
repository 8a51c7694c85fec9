import { firstPlaceFrom } from '../maths/first-place.js';
import { intersectIntervals, isCovered, totalLength, type Interval } from '../maths/intervals.js';
import type { Claim } from './claim.js';

/** Fewer alarms of the machine than this tell no rhythm (own choice). */
const FEWEST_ALARMS = 10;
/** So many alarms of the machine while a fault stands prove that it ran: fewer may come from people at work (own choice). */
const FEWEST_TO_RUN = 3;
/** Silence of so many mean gaps has a chance of e⁻⁴, 2 %, on a machine that runs (Poisson process, from memory). */
const SILENT_GAPS = 4;

/**
 * How often a machine raises alarms of its own while it produces. A machine that stands cannot jam, so where no log
 * says when it ran, its own alarms do.
 */
export interface StopRhythm {
  /** Starts of its alarms, ascending, ms. */
  readonly startsMs: Float64Array;
  /** Production time per alarm. */
  readonly meanGapMs: number;
  readonly planned: readonly Interval[];
}

/**
 * @param plannedTime Asked only where there are alarms enough: it costs a walk through the digest.
 * @returns null when there are too few alarms to tell. Never throws.
 */
export function stopRhythm(startsMs: Float64Array, plannedTime: () => readonly Interval[]): StopRhythm | null {
  if (startsMs.length < FEWEST_ALARMS) return null;
  const planned = plannedTime();
  const inProduction = startsMs.filter((at) => isCovered(planned, at));
  if (inProduction.length < FEWEST_ALARMS) return null;
  return { startsMs: inProduction, meanGapMs: totalLength(planned) / inProduction.length, planned };
}

/**
 * Ends a zone's claim where the machine ran on with the fault: one mean gap before the first of its own alarms in it,
 * which is the expected wait. With fewer than `FEWEST_TO_RUN` of them it stood all the time.
 */
export function untilItRan(claim: Claim, rhythm: StopRhythm, resetMs: number): Claim {
  const first = placeAfter(rhythm, claim.startMs);
  if (firstPlaceFrom(rhythm.startsMs, claim.faultEndMs) - first < FEWEST_TO_RUN) return claim;
  const endMs = Math.max(claim.startMs + resetMs, rhythm.startsMs[first]! - rhythm.meanGapMs);
  return { ...claim, endMs: Math.min(claim.endMs, endMs), faultEndMs: endMs };
}

/**
 * A zone alarm that need not stop a machine does so when the machine falls silent with it.
 *
 * @returns The claim until the machine ran again; null when the silence is not long enough to tell.
 */
export function whileSilent(claim: Claim, rhythm: StopRhythm): Claim | null {
  const next = rhythm.startsMs[placeAfter(rhythm, claim.startMs)] ?? Infinity;
  const endMs = Math.min(claim.faultEndMs, next);
  const silentMs = totalLength(intersectIntervals(rhythm.planned, [{ start: claim.startMs, end: endMs }]));
  if (silentMs < SILENT_GAPS * rhythm.meanGapMs) return null;
  const untilMs = endMs === next ? next - rhythm.meanGapMs : endMs;
  return { ...claim, endMs: untilMs, faultEndMs: untilMs };
}

/** Place of the first alarm behind a time, not of one at it. */
function placeAfter({ startsMs }: StopRhythm, timeMs: number): number {
  let place = firstPlaceFrom(startsMs, timeMs);
  while (startsMs[place] === timeMs) place++;
  return place;
}
