import type { Evidence, Judge, Symptom } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { firstPlaceFrom } from '../../maths/first-place.js';
import { median } from '../../maths/quantile.js';
import { exposureBetween } from '../shared/readings/exposure.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { loneExcursionsOf, type Excursion, type LoneExcursions } from '../shared/moves/lone-excursions.js';
import { rateFacts } from '../shared/opens/rate-facts.js';
import { samplingMsOf, SLOWEST_SAMPLING_FOR_STEPS_MS } from '../shared/basics/sampling.js';
import { stepOhm } from '../shared/basics/step-ohm.js';
import { highest } from '../../maths/extremes.js';
import { matesOf } from '../shared/basics/mates.js';

export interface LoneExcursionsSettings {
  /** Fewer are told as nothing: doors and product make one now and then. */
  readonly fewestExcursions: number;
  /** Both directions must be there: a contact that goes away comes back, product pulls one way only. */
  readonly smallestShareEachWay: number;
  /** Chance, for all onsets tried, that they came at an even rate all along. */
  readonly largestPValue: number;
  /** The own rate must be this many times what half of the peers reach in the same time. */
  readonly timesPeers: number;
  /** Watched hours without which no rate is known. */
  readonly fewestHours: number;
}

/** A settled zone that begins to jump both ways, pulled back within minutes, alone on its machine. */
export const loneExcursions: Judge<LoneExcursionsSettings> = {
  meta: {
    id: 'lone-excursions',
    sees: 'a settled zone that begins to jump up and down for a minute or two, alone on its machine',
    needs: ['reading', 'peers'],
    source:
      'Common practice: a quick loop pulls a false step back at once; exact test of two Poisson rates (Przyborowski & Wilenski 1940, from memory).',
    defaults: {
      fewestExcursions: 6,
      smallestShareEachWay: 0.2,
      largestPValue: 0.01,
      timesPeers: 4,
      fewestHours: 12,
    },
  },
  judge(evidence, settings) {
    return judgeZones(evidence, 'lone-excursions', (zone) => judgeZone(evidence, zone, settings));
  },
};

function judgeZone(evidence: Evidence, zone: Zone, settings: LoneExcursionsSettings): ZoneAnswer {
  if (samplingMsOf(zone) > SLOWEST_SAMPLING_FOR_STEPS_MS) {
    return `Zone ${zone.name}: logged every ${samplingMsOf(zone) / 1000} s, needed ${SLOWEST_SAMPLING_FOR_STEPS_MS / 1000} s or less.`;
  }
  const peers = matesOf(evidence.zones, zone);
  if (peers.length === 0) return `Zone ${zone.name}: no other zone of its machine is logged.`;
  const all = loneExcursionsOf(evidence);
  const own = all[zone.index]!;
  const hours = hoursBetween(evidence, own, -Infinity, Infinity);
  if (hours < settings.fewestHours) {
    return `Zone ${zone.name}: ${hours.toFixed(1)} h settled and hot, needed ${settings.fewestHours}.`;
  }
  const onset = onsetOf(evidence, own);
  if (!onset || onset.pValue > settings.largestPValue) return [];
  const since = own.excursions.slice(onset.first);
  if (since.length < settings.fewestExcursions) return [];
  const upShare = since.filter(({ sizeDegC }) => sizeDegC > 0).length / since.length;
  if (Math.min(upShare, 1 - upShare) < settings.smallestShareEachWay) return [];
  const perHour = since.length / hoursBetween(evidence, own, onset.fromMs, Infinity);
  const peersPerHour = median(
    peers.map((peer) => ratePerHour(evidence, all[peer.index]!, onset.fromMs)).filter(Number.isFinite),
  );
  if (Number.isNaN(peersPerHour)) {
    return `Zone ${zone.name}: no other zone of its machine was settled and hot since its jumps began.`;
  }
  if (perHour < settings.timesPeers * peersPerHour) return [];
  return [describe(evidence, zone, own, since, { upShare, perHour, peersPerHour, ...onset })];
}

interface Onset {
  readonly first: number;
  readonly fromMs: number;
  readonly pValue: number;
}

/** The excursion from which on they come most clearly at a higher rate; its chance counts every one tried. */
function onsetOf(evidence: Evidence, own: LoneExcursions): Onset | null {
  const { excursions } = own;
  let best: Onset | null = null;
  for (let first = 0; first < excursions.length; first++) {
    const fromMs = excursions[first]!.timeMs;
    // The one that starts the count is not counted, or the choice of the start would count as evidence.
    const { higherPValue } = rateFacts(
      { events: excursions.length - first - 1, exposure: hoursBetween(evidence, own, fromMs, Infinity) },
      { events: first, exposure: hoursBetween(evidence, own, -Infinity, fromMs) },
    );
    const pValue = Math.min(1, higherPValue * excursions.length);
    if (pValue < (best?.pValue ?? Infinity)) best = { first, fromMs, pValue };
  }
  return best;
}

function ratePerHour(evidence: Evidence, zone: LoneExcursions, fromMs: number): number {
  return (
    zone.excursions.filter(({ timeMs }) => timeMs >= fromMs).length / hoursBetween(evidence, zone, fromMs, Infinity)
  );
}

function hoursBetween({ digest }: Evidence, watched: LoneExcursions, fromMs: number, toMs: number): number {
  const { startMs, periodMs } = digest;
  const { watchedPlaces, placeHours } = watched;
  const countBefore = (ms: number) => firstPlaceFrom(watchedPlaces, (ms - startMs) / periodMs);
  return (countBefore(toMs) - countBefore(fromMs)) * placeHours;
}

function describe(
  evidence: Evidence,
  zone: Zone,
  own: LoneExcursions,
  since: readonly Excursion[],
  rate: Onset & { readonly upShare: number; readonly perHour: number; readonly peersPerHour: number },
): Symptom {
  const sizes = since.map(({ sizeDegC }) => Math.abs(sizeDegC));
  const answers = since.map(({ sizeDegC, answerPercent }) => -Math.sign(sizeDegC) * answerPercent);
  const medianStepDegC = median(sizes);
  const levelDegC = median(since.map(({ beforeDegC }) => beforeDegC));
  const { loggedHours } = exposureBetween(evidence, zone.index, rate.fromMs, Infinity);
  return symptomOf('lone-excursions', rate.fromMs, since.at(-1)!.timeMs, since.length, {
    excursionCount: since.length,
    beforeCount: rate.first,
    upShare: rate.upShare,
    medianStepDegC,
    largestStepDegC: highest(sizes),
    medianStepOhm: stepOhm(zone, levelDegC, medianStepDegC),
    scatterDegC: own.scatterDegC,
    loopAnswerPercent: median(answers.filter(Number.isFinite)),
    excursionsPerDay: since.length / Math.max(1 / 24, loggedHours / 24),
    peersRatio: Math.min(999, rate.perHour / rate.peersPerHour),
    beginsPValue: rate.pValue,
  });
}
