import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS, DAY_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { trailingMean } from '../../maths/trailing-mean.js';
import { heldDegCOf } from '../shared/duty/chart-points.js';
import { fullOutputPercentOf } from '../shared/readings/full-output.js';
import { heatUpsOf } from '../shared/heating/heat-ups.js';
import { judgeZones, symptomOf, windowOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { placesPerSampleOf } from '../shared/basics/sampling.js';
import { maskOf } from '../shared/readings/mask.js';
import { noHeatRunsOf } from '../shared/heating/power-runs.js';
import { isSignalLost } from '../shared/heating/run-ends.js';
import type { ChangeFit } from '../shared/duty/change-fit.js';
import { betterFit, isAgreed, isDutyBeyondLoad, isHeatLost, isSensorUnchanged } from '../shared/duty/reading-error.js';
import { zoneChangesOf } from '../shared/duty/zone-changes.js';
import { matesOf } from '../shared/basics/mates.js';

export interface HeaterWeakSettings {
  /** Squared standard deviations that a rise of duty must explain. */
  readonly leastGain: number;
  /** Rise of duty, as share of what it was; less is told by `duty-shift` alone. */
  readonly leastRiseShare: number;
  /** Full output without reaching the temperature for this long is more than a start-up. */
  readonly leastFullMinutes: number;
}

/** At full output a sound zone gains more than this from one mean to the next (own choice). */
const LEAST_RISE_DEG_C = 2.5;
/** Nearer than this a loop at full output is at its set point. */
const LEAST_BELOW_DEG_C = 2;
const FIRST_DAY_MS = DAY_MS;
/** Further below its temperature it is not weak but dead (own choice, share of the way down to nothing). */
const DEAD_SHARE = 0.5;

/** More heat asked for than before, or full output that does not suffice, with a sensor that did not change. */
export const heaterWeak: Judge<HeaterWeakSettings> = {
  meta: {
    id: 'heater-weak',
    sees: 'a zone that needs much more output than before, or full output without reaching its temperature',
    needs: ['reading', 'output'],
    source: 'Same heat from part of the heater needs more of the time: duty ∝ 1/power; common practice.',
    defaults: { leastGain: 30, leastRiseShare: 0.12, leastFullMinutes: 30 },
  },
  judge(evidence, settings) {
    const places = placesOf(evidence, settings);
    const full = evidence.zones.map((zone) => fullPlaces(evidence, zone, places));
    return judgeZones(evidence, 'heater-weak', (zone) => judgeZone(evidence, zone, full, settings));
  },
};

/** @param full By zone index, as {@link fullPlaces} gives it. */
function judgeZone(
  evidence: Evidence,
  zone: Zone,
  full: readonly Uint8Array[],
  settings: HeaterWeakSettings,
): ZoneAnswer {
  if (!zone.has.output) return `Zone ${zone.name}: the log has no output, so the heat asked for is not known.`;
  if (isReadingLow(evidence, zone)) return [];
  const rise = dutyRise(evidence, zone, settings);
  const shortfall = fullOutput(evidence, zone, full, settings);
  // A zone that was hardly settled has no usual duty: what it asks for cannot be more than usual.
  if (!rise && !shortfall) return zoneChangesOf(evidence)[zone.index]!.dutyUnable ?? [];
  const onsetMs = Math.min(rise?.onsetMs ?? Infinity, shortfall?.onsetMs ?? Infinity);
  return [
    symptomOf('heater-weak', onsetMs, windowOf(evidence).endMs, 1, {
      dutyRatio: rise?.dutyRatio ?? NaN,
      dutyRisePercent: rise?.risePercent ?? NaN,
      zScoreRatio: rise?.zScoreRatio ?? NaN,
      soakChangeDegC: rise?.soakChangeDegC ?? NaN,
      soakErrorDegC: rise?.soakErrorDegC ?? NaN,
      isStepCount: rise ? rise.isStep : NaN,
      fullOutputMinutes: shortfall?.minutes ?? 0,
      belowDegC: shortfall?.belowDegC ?? 0,
      heatUpRatio: heatUpRatio(evidence, zone, onsetMs),
    }),
  ];
}

/** A sensor that reads low, cold as hot, asks for more heat than is wrong with the heater. */
function isReadingLow(evidence: Evidence, zone: Zone): boolean {
  const fit = betterFit(zoneChangesOf(evidence)[zone.index]!);
  return fit !== null && isAgreed(fit) && fit.cold!.degC < 0 && isDutyAsCold(fit);
}

/** Whether the offset seen cold explains at least half of the heat that the zone asks for. */
function isDutyAsCold({ hot, cold }: ChangeFit): boolean {
  return cold!.degC / hot!.degC >= 0.5;
}

function dutyRise(evidence: Evidence, zone: Zone, settings: HeaterWeakSettings) {
  const change = zoneChangesOf(evidence)[zone.index]!;
  const fit = betterFit(change);
  if (!fit?.hot || !change.duty || fit.hot.gain < settings.leastGain || fit.hot.degC >= 0) return null;
  const isSensorSound = fit.cold === null || fit.cold.gain === 0 || isSensorUnchanged(fit);
  if (!isHeatLost(fit, change) && !(isDutyBeyondLoad(fit, change, 0) && isSensorSound)) return null;
  const dutyPercent = median(change.duty.dutyPercent.filter((_, i) => change.duty!.timeMs[i]! < fit.onsetMs));
  const risePercent = -fit.hot.degC * change.duty.percentPerDegC;
  if (!(risePercent >= settings.leastRiseShare * dutyPercent)) return null;
  return {
    onsetMs: fit.onsetMs,
    risePercent,
    dutyRatio: 1 + risePercent / dutyPercent,
    zScoreRatio: Math.sqrt(fit.hot.gain),
    soakChangeDegC: fit.cold?.degC ?? NaN,
    soakErrorDegC: fit.cold?.errorDegC ?? NaN,
    isStep: fit.shape === 'step' ? 1 : 0,
  };
}

/**
 * Time at full output in which the reading neither rises nor stands at the set point. Means over `leastFullMinutes`
 * are taken, for an output that only switches is full at half of its samples in any sound zone.
 */
function fullOutput(evidence: Evidence, zone: Zone, full: readonly Uint8Array[], settings: HeaterWeakSettings) {
  const { digest } = evidence;
  const data = digest.zones[zone.index]!;
  const heldDegC = heldDegCOf(evidence)[zone.index] ?? NaN;
  const mask = maskOf(evidence)[zone.index]!;
  const places = placesOf(evidence, settings);
  const reading = trailingMean(data.meanDegC, places);
  const peers = matesOf(evidence.zones, zone).map((mate) => full[mate.index]!);
  // A reading that fell faster than heat can leave says nothing of the heater.
  const lost = noHeatRunsOf(evidence)[zone.index]!.filter(isSignalLost);
  const isLost = (i: number) => {
    const atMs = digest.startMs + i * digest.periodMs;
    return lost.some(({ startMs, endMs }) => atMs >= startMs && atMs <= endMs);
  };
  let onset = -1;
  const below: number[] = [];
  for (let i = 2 * places; i < digest.length; i++) {
    const targetDegC = data.setpointDegC[i]! > 0 ? data.setpointDegC[i]! : heldDegC;
    const belowDegC = targetDegC - reading[i]!;
    const isBelow = belowDegC >= LEAST_BELOW_DEG_C && reading[i]! > DEAD_SHARE * targetDegC;
    const isFull = !mask[i] && full[zone.index]![i] === 1 && !isShared(peers, i);
    if (!isFull || !isBelow || isLost(i) || !(reading[i]! - reading[i - places]! < LEAST_RISE_DEG_C)) continue;
    if (onset < 0) onset = i - places;
    below.push(belowDegC);
  }
  const minutes = (below.length * placesPerSampleOf(zone, digest.periodMs) * digest.periodMs) / MINUTE_MS;
  // From the first day on it is a zone that was built so, not one that became weak.
  if (minutes < settings.leastFullMinutes || onset * digest.periodMs < FIRST_DAY_MS) return null;
  return { onsetMs: digest.startMs + onset * digest.periodMs, minutes, belowDegC: median(below) };
}

function placesOf({ digest }: Evidence, { leastFullMinutes }: HeaterWeakSettings): number {
  return Math.max(1, Math.round((leastFullMinutes * MINUTE_MS) / digest.periodMs));
}

/** 1 where the mean output over the last places is the most that the controller gives. */
function fullPlaces(evidence: Evidence, zone: Zone, places: number): Uint8Array {
  const fullPercent = fullOutputPercentOf(evidence)[zone.index]!;
  const means = trailingMean(evidence.digest.zones[zone.index]!.outputPercent, places);
  return new Uint8Array(means.length).map((_, i) => (means[i]! >= fullPercent ? 1 : 0));
}

/** Half of the peers at full output too: the machine starts, or its supply is low. */
function isShared(peers: readonly Uint8Array[], i: number): boolean {
  const count = peers.filter((full) => full[i] === 1).length;
  return count > 0 && count >= peers.length / 2;
}

/** Slope of the heat-ups after the onset over that before; NaN without one on either side. */
function heatUpRatio(evidence: Evidence, zone: Zone, onsetMs: number): number {
  const slopes = (isAfter: boolean) =>
    median(
      heatUpsOf(evidence)
        [zone.index]!.filter(({ startMs }) => startMs >= onsetMs === isAfter)
        .map(({ slopeDegCPerMinute }) => slopeDegCPerMinute),
    );
  return slopes(true) / slopes(false);
}
