import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { samplingMsOf, SLOWEST_SAMPLING_FOR_STEPS_MS } from '../basics/sampling.js';
import { hasNear, opensOf } from '../opens/opens.js';
import { noiseDegCOf } from '../readings/noise.js';
import { isCommonMove } from './common-moves.js';

export interface OwnStepSettings {
  /** Steps below this many noise SDs of the zone are noise (own choice). */
  readonly timesNoise: number;
  /** A step with an open this close beside it belongs to the open (own choice). */
  readonly nearOpenMinutes: number;
}

/** Why steps of a zone that is held at a temperature do not show in its log; null where they do. */
export function tooSlowForSteps(zone: Zone): string | null {
  const isHeld = zone.has.output || zone.has.setpoint;
  if (!isHeld || samplingMsOf(zone) <= SLOWEST_SAMPLING_FOR_STEPS_MS) return null;
  return `Zone ${zone.name}: logged every ${samplingMsOf(zone) / 1000} s, so the loop takes a step back before it is logged.`;
}

/**
 * Steps of one zone that are its own, in time order: neither noise, nor beside an open, nor made by the machine or by
 * what moves its neighbours, too.
 */
export function ownStepsOf(evidence: Evidence, zone: Zone, settings: OwnStepSettings): readonly Episode[] {
  const steps = evidence.episodes.get('settled-step')?.[zone.index] ?? [];
  const opensMs = opensOf(evidence)[zone.index]!.map((open) => open.startMs);
  const smallestDegC = settings.timesNoise * noiseDegCOf(evidence, zone);
  return steps.filter(
    (step) =>
      Math.abs(step.facts['stepDegC']!) >= smallestDegC &&
      !hasNear(opensMs, step.endMs, settings.nearOpenMinutes * MINUTE_MS) &&
      !isCommonMove(evidence, zone, step),
  );
}
