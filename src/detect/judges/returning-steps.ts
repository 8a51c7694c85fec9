import type { Episode, Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { signTest } from '../../maths/sign-test.js';
import { median } from '../../maths/quantile.js';
import { robustSd } from '../../maths/spread.js';
import { exposuresOf, conditionsOf, conditionAt } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { heldDegCOf } from '../shared/duty/chart-points.js';
import { degreesText } from '../shared/duty/visible-change.js';
import { ownStepsOf, tooSlowForSteps, type OwnStepSettings } from '../shared/moves/own-steps.js';
import { noiseDegCOf, smallestStepDegC } from '../shared/readings/noise.js';
import { rateFacts } from '../shared/opens/rate-facts.js';
import { stepOhm } from '../shared/basics/step-ohm.js';
import { highest } from '../../maths/extremes.js';

export interface ReturningStepsSettings extends OwnStepSettings {
  /** Fewer steps are told as nothing: product and doors make one now and then (own choice). */
  readonly fewestSteps: number;
}

/**
 * Steps between levels that come and go: the sign of a contact resistance (about 2.6 °C per ohm on a Pt100). Steps
 * that other zones make too, or that come as the machine starts or stops, are left out: product and doors move zones.
 */
export const returningSteps: Judge<ReturningStepsSettings> = {
  meta: {
    id: 'returning-steps',
    sees: 'steps of the reading that come and go while the zone is settled',
    needs: ['reading'],
    source: 'Common practice; 1 Ω in series with a Pt100 reads 2.6 °C more (IEC 60751, slope at 50 °C).',
    defaults: { fewestSteps: 3, timesNoise: 5, nearOpenMinutes: 5 },
  },
  judge(evidence, settings) {
    const exposures = exposuresOf(evidence);
    return judgeZones(evidence, 'returning-steps', (zone) => {
      const all = evidence.episodes.get('settled-step')?.[zone.index];
      if (!all) return `Zone ${zone.name}: no watcher looked for steps.`;
      const alone = ownStepsOf(evidence, zone, settings);
      if (alone.length < settings.fewestSteps) return notVisible(evidence, zone);
      const exposure = exposures[zone.index]!;
      return [
        symptomOf('returning-steps', alone[0]!.startMs, alone.at(-1)!.endMs, alone.length, {
          ...stepFacts(alone),
          ...ohmFacts(zone, alone),
          sharedStepCount: all.length - alone.length,
          stepsPerDay: alone.length / Math.max(1 / 24, exposure.loggedHours / 24),
          noiseDegC: noiseDegCOf(evidence, zone),
          ...runningFacts(evidence, zone, alone),
          ...growthFacts(evidence, alone),
        }),
      ];
    });
  },
};

/** A contact of one ohm in a Pt100 circuit (IEC 60751, slope at 50 °C), where the sensor is not stated. */
const USUAL_CONTACT_DEG_C = 2.6;

/** Nothing seen means little where a contact of one ohm would not show either. */
function notVisible(evidence: Evidence, zone: Zone): ZoneAnswer {
  const tooSlow = tooSlowForSteps(zone);
  if (tooSlow !== null) return tooSlow;
  const smallestDegC = smallestStepDegC(evidence, zone);
  const contactDegC = 1 / stepOhm(zone, heldDegCOf(evidence)[zone.index] ?? 50, 1);
  const faultDegC = Number.isNaN(contactDegC) ? USUAL_CONTACT_DEG_C : contactDegC;
  if (!(smallestDegC > faultDegC)) return [];
  return `Zone ${zone.name}: a step below ${degreesText(smallestDegC)} °C is lost in its noise and its last digit; a contact of 1 Ω makes ${degreesText(faultDegC)} °C.`;
}

function stepFacts(steps: readonly Episode[]): Record<string, number> {
  const sizes = steps.map((step) => step.facts['stepDegC']!);
  const magnitudes = sizes.map(Math.abs);
  const ups = sizes.filter((size) => size > 0);
  const downs = sizes.filter((size) => size < 0);
  const turns = sizes.slice(1).filter((size, i) => size * sizes[i]! < 0).length;
  const reactions = steps.map(
    ({ facts }) => -Math.sign(facts['stepDegC']!) * (facts['outputAfterPercent']! - facts['outputBeforePercent']!),
  );
  return {
    upCount: ups.length,
    downCount: downs.length,
    upShare: ups.length / sizes.length,
    signPValue: signTest(sizes).pTwoSided,
    turnShare: sizes.length > 1 ? turns / (sizes.length - 1) : NaN,
    medianUpDegC: median(ups),
    medianDownDegC: median(downs.map(Math.abs)),
    medianStepDegC: median(magnitudes),
    largestStepDegC: highest(magnitudes),
    stepSpreadRatio: robustSd(magnitudes) / median(magnitudes),
    loopReactionPercent: median(reactions),
    shiftedShare: shiftedShare(steps, ups.length, downs.length),
  };
}

/** Ohms in series that would make the median and the largest step, at the level from which the steps start. */
function ohmFacts(zone: Zone, steps: readonly Episode[]): Record<string, number> {
  const sizes = steps.map((step) => Math.abs(step.facts['stepDegC']!));
  const levelDegC = median(steps.map((step) => step.facts['beforeDegC']!));
  return {
    medianStepOhm: stepOhm(zone, levelDegC, median(sizes)),
    largestStepOhm: stepOhm(zone, levelDegC, highest(sizes)),
  };
}

/** Share of the time from the first to the last step that lies after a step away and before the step back. */
function shiftedShare(steps: readonly Episode[], ups: number, downs: number): number {
  const first = Math.sign(steps[0]!.facts['stepDegC']!);
  const away = ups === downs ? first : ups > downs ? 1 : -1;
  let shiftedMs = 0;
  for (let i = 1; i < steps.length; i++) {
    const isAway = Math.sign(steps[i - 1]!.facts['stepDegC']!) === away;
    if (isAway) shiftedMs += steps[i]!.startMs - steps[i - 1]!.endMs;
  }
  return shiftedMs / (steps.at(-1)!.endMs - steps[0]!.startMs);
}

function runningFacts(evidence: Evidence, zone: Zone, steps: readonly Episode[]): Record<string, number> {
  const { runningShare, runningFrom } = conditionsOf(evidence)[zone.index]!;
  const exposure = exposuresOf(evidence)[zone.index]!;
  if (runningFrom === 'unknown') return {};
  const shares = steps.map((step) => step.facts['runningShare'] ?? conditionAt(evidence, runningShare, step.startMs));
  const running = shares.filter((share) => share >= 0.5).length;
  const standing = shares.filter((share) => share < 0.5).length;
  const rates = rateFacts(
    { events: running, exposure: exposure.hotRunningHours },
    { events: standing, exposure: exposure.hotStoppedHours },
  );
  return {
    runningShare: running / (running + standing),
    exposureRunningShare: exposure.hotRunningHours / (exposure.hotRunningHours + exposure.hotStoppedHours),
    runningHigherPValue: rates.higherPValue,
  };
}

/** Steps in the second half of the log against the first. */
function growthFacts({ digest }: Evidence, steps: readonly Episode[]): Record<string, number> {
  const middleMs = digest.startMs + (digest.length * digest.periodMs) / 2;
  const last = steps.filter((step) => step.endMs >= middleMs).length;
  const rates = rateFacts({ events: last, exposure: 1 }, { events: steps.length - last, exposure: 1 });
  return { firstCount: steps.length - last, lastCount: last, growthPValue: rates.higherPValue };
}
