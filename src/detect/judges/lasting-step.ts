import type { Episode, Evidence, Judge, Symptom } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { HOUR_MS } from '../../model/time-units.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { sizeOfKnownColumn, type ChangeSize } from '../shared/duty/change-fit.js';
import { degreesText } from '../shared/duty/visible-change.js';
import { hotSeriesAgain } from '../shared/duty/zone-changes.js';
import { ownStepsOf, tooSlowForSteps, type OwnStepSettings } from '../shared/moves/own-steps.js';
import { momentMsOf } from '../shared/opens/opens.js';
import { maskOf } from '../shared/readings/mask.js';
import { noiseDegCOf, smallestStepDegC } from '../shared/readings/noise.js';

export interface LastingStepSettings extends OwnStepSettings {
  /** Smaller steps may be product, a door or a splash (own choice). */
  readonly smallestDegC: number;
  /** Larger ones are no error of a reading but a lost one, for others to judge (own choice). */
  readonly largestDegC: number;
  /** More steps are those of a contact, for returning-steps to judge. */
  readonly mostSteps: number;
  /** A jump back of this share takes a step back (own choice). */
  readonly takenBackShare: number;
  /** So long the log goes on behind the step without a jump back (own choice). */
  readonly shortestStayHours: number;
  /** The duty tells when it could show the step by so many standard deviations … */
  readonly leastDutyZScore: number;
  /** … and confirms it when it moved by this share of it at least … (own choice) */
  readonly leastDutyShare: number;
  /** … and by this share at most: a size by the duty comes out up to twice the true one (own measurement). */
  readonly mostDutyShare: number;
}

interface Lasting {
  readonly step: Episode;
  readonly duty: ChangeSize | null;
  readonly stepCount: number;
}

/** One step that nothing takes back: the loop pulls the reading to its set point again, and the zone is wrong from then on. */
export const lastingStep: Judge<LastingStepSettings> = {
  meta: {
    id: 'lasting-step',
    sees: 'a jump of the settled reading that nothing takes back, and a duty that changes by as much',
    needs: ['reading'],
    source:
      'Common practice; the heat that a zone needs goes with T − T_room (Newton’s law of cooling, Incropera ch. 5).',
    defaults: {
      smallestDegC: 2,
      largestDegC: 40,
      timesNoise: 5,
      nearOpenMinutes: 5,
      mostSteps: 4,
      takenBackShare: 0.5,
      shortestStayHours: 1,
      leastDutyZScore: 4,
      leastDutyShare: 0.4,
      mostDutyShare: 2.5,
    },
  },
  judge(evidence, settings) {
    const found = evidence.zones.map((zone) => lastingOf(evidence, zone, settings));
    return judgeZones(evidence, 'lasting-step', (zone) => {
      const own = found[zone.index]!;
      return own ? [symptom(evidence, zone, own, togetherCount(zone, found))] : notVisible(evidence, zone, settings);
    });
  },
};

const stepDegCOf = ({ facts }: Episode): number => facts['stepDegC']!;
const sizeOf = (step: Episode): number => Math.abs(stepDegCOf(step));

/** The largest step of a zone that lasts; null without one. */
function lastingOf(evidence: Evidence, zone: Zone, settings: LastingStepSettings): Lasting | null {
  const steps = ownStepsOf(evidence, zone, settings);
  if (steps.length > settings.mostSteps) return null;
  const lasting = steps
    .filter((step) => isLasting(evidence, zone, step, settings))
    .map((step) => ({ step, duty: dutyChange(evidence, zone, step), stepCount: steps.length }))
    .filter(({ step, duty }) => isErrorOfReading(step, duty, settings));
  return lasting.sort((a, b) => sizeOf(b.step) - sizeOf(a.step))[0] ?? null;
}

/** Of the size of an error, between usable readings, long enough before the end, and neither taken back nor taking one back. */
function isLasting(evidence: Evidence, zone: Zone, step: Episode, settings: LastingStepSettings): boolean {
  const { endMs } = windowOf(evidence);
  if (sizeOf(step) < settings.smallestDegC || sizeOf(step) > settings.largestDegC) return false;
  if (endMs - step.endMs < settings.shortestStayHours * HOUR_MS || isBesideNothing(evidence, zone, step)) return false;
  const jumpsDegC = [
    ...(evidence.episodes.get('settled-step')?.[zone.index] ?? []).map(stepDegCOf),
    ...(evidence.episodes.get('impossible-step')?.[zone.index] ?? []).map(({ facts }) => facts['jumpDegC']!),
  ];
  const sign = Math.sign(stepDegCOf(step));
  return !jumpsDegC.some((jumpDegC) => -sign * jumpDegC >= settings.takenBackShare * sizeOf(step));
}

/** Before or after it the reading stood still or was none. */
function isBesideNothing(evidence: Evidence, zone: Zone, { startMs, endMs }: Episode): boolean {
  const { digest } = evidence;
  const mask = maskOf(evidence)[zone.index]!;
  const places = [startMs - digest.periodMs, endMs + digest.periodMs];
  return places.some((at) => mask[Math.floor((at - digest.startMs) / digest.periodMs)] === 1);
}

/** The duty moved as the step asks; where it does not tell, no heater could move the zone so fast. */
function isErrorOfReading(step: Episode, duty: ChangeSize | null, settings: LastingStepSettings): boolean {
  const { leastDutyZScore, leastDutyShare, mostDutyShare } = settings;
  if (!duty || sizeOf(step) < leastDutyZScore * duty.errorDegC) return sizeOf(step) > step.facts['fullPowerDegC']!;
  const share = duty.degC / stepDegCOf(step);
  const isSure = Math.abs(duty.degC) >= leastDutyZScore * duty.errorDegC;
  return isSure && share >= leastDutyShare && share <= mostDutyShare;
}

/** By how much the duty says that the reading error changed at the step; null where it says nothing. */
function dutyChange(evidence: Evidence, zone: Zone, { endMs }: Episode): ChangeSize | null {
  const series = hotSeriesAgain(evidence, zone.index);
  if (!series) return null;
  const size = sizeOfKnownColumn(
    series,
    Float64Array.from(series.timeMs, (at) => (at >= endMs ? 1 : 0)),
  );
  return size.errorDegC < Infinity ? size : null;
}

/** Other zones whose reading jumped in the same moment, the same way, for good. */
function togetherCount(zone: Zone, found: readonly (Lasting | null)[]): number {
  const { step } = found[zone.index]!;
  const withinMs = momentMsOf(zone);
  return found.filter(
    (other, index) =>
      other !== null &&
      index !== zone.index &&
      Math.abs(other.step.endMs - step.endMs) <= withinMs &&
      stepDegCOf(other.step) * stepDegCOf(step) > 0,
  ).length;
}

/** The first readings behind the step have noise, too, and the loop has begun to take it back (own choice). */
const TIMES_NOISE = 2;

function symptom(evidence: Evidence, zone: Zone, { step, duty, stepCount }: Lasting, together: number): Symptom {
  const { endMs } = windowOf(evidence);
  const noiseDegC = noiseDegCOf(evidence, zone);
  return symptomOf('lasting-step', step.startMs, endMs, 1, {
    offsetDegC: stepDegCOf(step),
    uncertaintyDegC: TIMES_NOISE * noiseDegC,
    stepCount,
    togetherCount: together,
    hotOffsetDegC: duty?.degC ?? NaN,
    hotErrorDegC: duty?.errorDegC ?? NaN,
    hotZScoreRatio: duty ? Math.abs(duty.degC) / duty.errorDegC : NaN,
    fullPowerRatio: sizeOf(step) / step.facts['fullPowerDegC']!,
    stayHours: (endMs - step.endMs) / HOUR_MS,
  });
}

function notVisible(evidence: Evidence, zone: Zone, { smallestDegC }: LastingStepSettings): ZoneAnswer {
  const tooSlow = tooSlowForSteps(zone);
  if (tooSlow !== null) return tooSlow;
  const visibleDegC = smallestStepDegC(evidence, zone);
  if (!(visibleDegC > smallestDegC)) return [];
  return `Zone ${zone.name}: a step below ${degreesText(visibleDegC)} °C is lost in its noise and its last digit.`;
}
