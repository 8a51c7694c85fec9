import type { Evidence, Judge, Symptom } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { HOUR_MS, DAY_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { fitChange, type ChangeFit } from '../shared/duty/change-fit.js';
import type { Decay } from '../shared/duty/trial-times.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { betterFit, isDutyBeyondLoad, smallestHotChangeDegC } from '../shared/duty/reading-error.js';
import { degreesText, workingToleranceDegC } from '../shared/duty/visible-change.js';
import { washDownsOf } from '../shared/cold/wash-downs.js';
import { fitWashDips, type WashDips } from '../shared/duty/wash-dips.js';
import type { SoakPoint } from '../shared/cold/soaks.js';
import { hotSeriesAgain, zoneChangesOf, type ZoneChange } from '../shared/duty/zone-changes.js';
import { highest, lowest } from '../../maths/extremes.js';

export interface WetRecoverySettings {
  /** Squared standard deviations that the dip must explain, and more than a lasting change does. */
  readonly leastGain: number;
  /** The same for a dip that the duty alone shows: starts and stops of the load leave dips of their own. */
  readonly leastHotGain: number;
  /** Smaller dips of the soak offset, or of the duty as °C, are told as nothing. */
  readonly smallestColdDegC: number;
  readonly smallestHotDegC: number;
  /** A leak that takes more than this is a short. */
  readonly largestColdDegC: number;
  readonly largestHotDegC: number;
  /** Dips after wash-downs, all taken together, count from this size on: together they are surer than one. */
  readonly smallestWashDegC: number;
  /** Dips of the soaks that come and go make one sign together from this number on. */
  readonly fewestDips: number;
}

/** Time constants of drying: from a few hours to a day (common practice). */
const decays: readonly Decay[] = [2, 4, 8, 16].map((decayHours) => ({ decayHours }));
/** A decay is over, for what a log shows, after this many time constants. */
const OVER_AFTER = 3;

/** A reading that goes low at once and comes back over hours, in the soaks or in the heat the zone needs. */
export const wetRecovery: Judge<WetRecoverySettings> = {
  meta: {
    id: 'wet-recovery',
    sees: 'a zone that reads low at once and comes back over hours, as wet terminals do while they dry',
    needs: ['reading', 'soak', 'peers'],
    source: 'A leak in parallel makes an RTD read low (parallel resistance); drying as exponential: common practice.',
    defaults: {
      leastGain: 40,
      leastHotGain: 100,
      smallestColdDegC: 1,
      smallestHotDegC: 2,
      largestColdDegC: 15,
      largestHotDegC: 40,
      smallestWashDegC: 0.5,
      fewestDips: 3,
    },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'wet-recovery', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: WetRecoverySettings): ZoneAnswer {
  const change = zoneChangesOf(evidence)[zone.index]!;
  const { cold } = change;
  if (!change.duty && !cold)
    return `${change.soaksUnable ?? `Zone ${zone.name}: too few cold soaks.`} ${change.dutyUnable ?? ''}`.trim();
  const { endMs } = windowOf(evidence);
  const dips = repeatedDips(change.soaks, settings);
  const hot = hotSeriesAgain(evidence, zone.index);
  const fit = fitChange(decays, hot, cold, endMs);
  const lastingGain = betterFit(change)?.gain ?? 0;
  const washed = fitWashDips(washDownsOf(evidence).get(zone.machine) ?? [], decays, hot, cold);
  const isAfterWash = washed !== null && isWashSure(washed, Math.max(lastingGain, fit?.gain ?? 0), settings);
  if (isAfterWash) return [washSymptom(washed, endMs)];
  const isOneDip = fit && isSure(fit, change, settings) && fit.gain >= lastingGain + settings.leastGain / 2;
  if (!isOneDip) return dips.length > 0 ? [dipsSymptom(dips)] : notVisible(evidence, zone, change, settings);
  const { decayHours } = fit.shape as Decay;
  const seenMs = [hot, cold].flatMap((series) => series?.timeMs.find((at) => at >= fit.onsetMs) ?? []);
  const left = Math.exp((fit.onsetMs - lowest(seenMs)) / (decayHours * HOUR_MS));
  const endedMs = Math.min(endMs, fit.onsetMs + OVER_AFTER * decayHours * HOUR_MS);
  return [
    symptomOf('wet-recovery', fit.onsetMs, endedMs, 1, {
      hotDepthDegC: fit.hot && fit.hot.gain > 0 ? fit.hot.degC * left : NaN,
      coldDepthDegC: fit.cold && fit.cold.gain > 0 ? fit.cold.degC * left : NaN,
      recoveryHours: decayHours,
      zScoreRatio: Math.sqrt(fit.gain),
      hotZScoreRatio: fit.hot ? Math.sqrt(fit.hot.gain) : NaN,
      coldZScoreRatio: fit.cold ? Math.sqrt(fit.cold.gain) : NaN,
      onsetUncertaintyHours: (fit.onsetHighMs - fit.onsetLowMs) / 2 / HOUR_MS,
      dipCount: Math.max(1, dips.length),
    }),
  ];
}

/** Low after wash-downs as a leak is, and better explained by them than by one change or one dip. */
function isWashSure({ gain, hot, cold }: WashDips, otherGain: number, settings: WetRecoverySettings): boolean {
  if (gain < settings.leastGain || gain < otherGain + settings.leastGain / 2) return false;
  const isLowCold = cold !== null && cold.gain >= settings.leastGain / 2 && cold.seenDegC <= -settings.smallestWashDegC;
  const isLowHot = hot !== null && hot.gain >= settings.leastHotGain && hot.seenDegC <= -settings.smallestHotDegC;
  return isLowCold || isLowHot;
}

function washSymptom({ onsetMs, washCount, decayHours, hot, cold, gain }: WashDips, endMs: number): Symptom {
  return symptomOf('wet-recovery', onsetMs, endMs, washCount, {
    hotDepthDegC: hot?.seenDegC ?? NaN,
    coldDepthDegC: cold?.seenDegC ?? NaN,
    recoveryHours: decayHours,
    zScoreRatio: Math.sqrt(gain),
    hotZScoreRatio: hot ? Math.sqrt(hot.gain) : NaN,
    coldZScoreRatio: cold ? Math.sqrt(cold.gain) : NaN,
    dipCount: washCount,
    washDownCount: washCount,
  });
}

/** Without soaks only a leak shows that moves the duty by more than load and room do; wet terminals seldom leak so much. */
function notVisible(evidence: Evidence, zone: Zone, change: ZoneChange, settings: WetRecoverySettings): ZoneAnswer {
  if (change.cold) return [];
  const smallestDegC = smallestHotChangeDegC(change, 'step', settings.smallestHotDegC);
  if (!(smallestDegC > workingToleranceDegC(evidence, zone, change))) return [];
  const size =
    smallestDegC === Infinity
      ? 'no dip of the reading shows'
      : `a dip below ${degreesText(smallestDegC)} °C does not show`;
  return `Zone ${zone.name} has too few cold soaks in this log, and by its duty alone ${size}.`;
}

interface Dip {
  readonly point: SoakPoint;
  readonly depthDegC: number;
  /** Until the first soak that is mostly back; what is left then falls by e in about that time. */
  readonly backHours: number;
}

/** A dip this many standard errors deep … */
const DIP_SDS = 3.5;
/** … that is mostly gone within a day; another one half a day later is another wetting (common practice: shifts). */
const LEFT_SHARE = 0.4;
const GONE_WITHIN_MS = DAY_MS;
const NEXT_AFTER_MS = 12 * HOUR_MS;

/** Soaks that read low and are back within a day, again and again; none where as much goes high, which is no leak. */
function repeatedDips(soaks: readonly SoakPoint[], { fewestDips, smallestColdDegC }: WetRecoverySettings): Dip[] {
  const usualDegC = median(soaks.map(({ offsetDegC }) => offsetDegC));
  const dipsOf = (sign: 1 | -1): Dip[] => {
    const dips: Dip[] = [];
    soaks.forEach((point, i) => {
      const depthDegC = sign * (usualDegC - point.offsetDegC);
      if (depthDegC < Math.max(smallestColdDegC, DIP_SDS * point.uncertaintyDegC)) return;
      const isUsual = (other: SoakPoint) => Math.abs(usualDegC - other.offsetDegC) <= LEFT_SHARE * depthDegC;
      const back = soaks.slice(i + 1).find(isUsual);
      const backMs = back ? back.timeMs - point.timeMs : Infinity;
      // Soaks that were low from the start tell of a level that rose, not of a dip.
      if (!soaks.slice(0, i).some(isUsual)) return;
      if (backMs > GONE_WITHIN_MS || point.timeMs - (dips.at(-1)?.point.timeMs ?? -Infinity) < NEXT_AFTER_MS) return;
      dips.push({ point, depthDegC, backHours: backMs / HOUR_MS });
    });
    return dips;
  };
  const low = dipsOf(1);
  return low.length >= fewestDips && dipsOf(-1).length === 0 ? low : [];
}

function dipsSymptom(dips: readonly Dip[]): Symptom {
  const z = Math.hypot(...dips.map(({ point, depthDegC }) => depthDegC / point.uncertaintyDegC));
  return symptomOf('wet-recovery', dips[0]!.point.startMs, dips.at(-1)!.point.endMs, dips.length, {
    coldDepthDegC: -highest(dips.map(({ depthDegC }) => depthDegC)),
    recoveryHours: median(dips.map(({ backHours }) => backHours)),
    zScoreRatio: z,
    coldZScoreRatio: z,
    dipCount: dips.length,
  });
}

function isSure(fit: ChangeFit, change: ZoneChange, settings: WetRecoverySettings): boolean {
  const { gain, hot, cold } = fit;
  if (gain < settings.leastGain) return false;
  const isLowCold =
    cold !== null &&
    cold.gain >= settings.leastGain / 2 &&
    cold.degC <= -settings.smallestColdDegC &&
    cold.degC >= -settings.largestColdDegC;
  const isLowHot =
    hot !== null &&
    hot.degC < 0 &&
    hot.degC >= -settings.largestHotDegC &&
    hot.gain >= settings.leastHotGain &&
    isDutyBeyondLoad(fit, change, settings.smallestHotDegC);
  const isHighHot = hot !== null && hot.degC > 0 && hot.gain >= settings.leastGain;
  return (isLowCold && !isHighHot) || isLowHot;
}
