import type { Evidence, Judge } from '../../model/detector.js';
import type { Zone } from '../../model/zone.js';
import { MINUTE_MS } from '../../model/time-units.js';
import { median } from '../../maths/quantile.js';
import { judgeZones, symptomOf, type ZoneAnswer } from '../shared/basics/judge-zones.js';
import { maskOf } from '../shared/readings/mask.js';
import { placesPerSampleOf, samplingMsOf } from '../shared/basics/sampling.js';
import { WARMEST_ROOM_DEG_C } from '../shared/basics/warmest-room.js';
import { matesOf } from '../shared/basics/mates.js';

export interface DeviationFromSetpointSettings {
  /** A loop at rest stays nearer than this. */
  readonly leastDegC: number;
  /** For so long without a break: longer than any stop of the load throws a zone off. */
  readonly leastMinutes: number;
  /** Time after a change of set point that is left out. */
  readonly settlingMinutes: number;
  /** A held zone does not fall so far by load alone … */
  readonly fallDegC: number;
  /** … nor so often: falls that come and go count although each is short. */
  readonly leastFalls: number;
}

/** A reading that stays away from its set point long after it should have settled. */
export const deviationFromSetpoint: Judge<DeviationFromSetpointSettings> = {
  meta: {
    id: 'deviation-from-setpoint',
    sees: 'a reading that stays away from its set point long after it should have settled, or falls from it again and again',
    needs: ['reading', 'setpoint'],
    source: 'Common practice: deviation alarms of controllers work so.',
    defaults: { leastDegC: 3, leastMinutes: 45, settlingMinutes: 60, fallDegC: 10, leastFalls: 4 },
  },
  judge(evidence, settings) {
    const away = evidence.zones.map((zone) => awayOf(evidence, zone));
    return judgeZones(evidence, 'deviation-from-setpoint', (zone) => judgeZone(evidence, zone, away, settings));
  },
};

interface Run {
  from: number;
  to: number;
  sign: number;
}

/** @param away By zone index, as {@link awayOf} gives it. */
function judgeZone(
  evidence: Evidence,
  zone: Zone,
  away: readonly Float64Array[],
  settings: DeviationFromSetpointSettings,
): ZoneAnswer {
  if (!zone.has.setpoint) return `Zone ${zone.name}: the log has no set point.`;
  const { digest } = evidence;
  const { meanDegC, setpointDegC, outputPercent } = digest.zones[zone.index]!;
  const { runs, onPlaces } = runsOf(evidence, zone, away, settings);
  const lasting = runs.filter(({ from, to }) => (to - from) * digest.periodMs >= settings.leastMinutes * MINUTE_MS);
  const belowDegC = new Float64Array(digest.length).map((_, i) => setpointDegC[i]! - meanDegC[i]!);
  const falls = runs.filter((run) => isFall(belowDegC, run, settings.fallDegC));
  const long = falls.length >= settings.leastFalls && falls.length > lasting.length ? falls : lasting;
  if (long.length === 0) {
    const heldMinutes = (onPlaces * digest.periodMs) / MINUTE_MS;
    const neededMinutes = settings.settlingMinutes + settings.leastMinutes;
    if (heldMinutes >= neededMinutes) return [];
    return `Zone ${zone.name}: heat was called for ${heldMinutes.toFixed(0)} min, needed ${neededMinutes}.`;
  }
  const places = long.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, k) => from + k));
  const at = (place: number) => digest.startMs + place * digest.periodMs;
  return [
    symptomOf('deviation-from-setpoint', at(long[0]!.from), at(long.at(-1)!.to), long.length, {
      deviationMinutes: (places.length * digest.periodMs) / MINUTE_MS,
      deviationDegC: median(places.map((i) => meanDegC[i]! - setpointDegC[i]!)),
      outputPercent: median(places.map((i) => outputPercent[i]!)),
      onTimeShare: places.length / onPlaces,
      fallCount: falls.length,
      lastsToEndCount: long.at(-1)!.to >= digest.length - 2 ? 1 : 0,
    }),
  ];
}

/** Begins near the set point and goes far below it; a late heat-up begins at its farthest. */
function isFall(belowDegC: Float64Array, { from, to, sign }: Run, fallDegC: number): boolean {
  const deepest = belowDegC.subarray(from, to).reduce((most, degC) => Math.max(most, degC || 0), 0);
  return sign < 0 && deepest >= fallDegC && belowDegC[from]! < deepest / 2;
}

/** A zone that comes nearer by this much in ten minutes is on its way and not away. */
const NEARER_DEG_C = 1;
const NEARER_MS = 10 * MINUTE_MS;

function runsOf(evidence: Evidence, zone: Zone, all: readonly Float64Array[], settings: DeviationFromSetpointSettings) {
  const { digest } = evidence;
  const { setpointDegC } = digest.zones[zone.index]!;
  const mask = maskOf(evidence)[zone.index]!;
  const away = all[zone.index]!;
  const peersAway = matesOf(evidence.zones, zone).map((mate) => all[mate.index]!);
  const settling = Math.ceil((settings.settlingMinutes * MINUTE_MS) / digest.periodMs);
  const back = Math.max(1, Math.round(NEARER_MS / digest.periodMs));
  const bridge = 1 + Math.ceil(samplingMsOf(zone) / digest.periodMs);
  const runs: Run[] = [];
  let changedAt = 0;
  let heldDegC = NaN;
  let onPlaces = 0;
  for (let i = 0; i < digest.length; i++) {
    const target = setpointDegC[i]!;
    if (target <= WARMEST_ROOM_DEG_C) heldDegC = NaN; // switched off: it has to heat up anew
    if (!(target > WARMEST_ROOM_DEG_C) || mask[i]) continue;
    if (Math.abs(target - heldDegC) < 0.5) onPlaces++;
    else [heldDegC, changedAt] = [target, i];
    if (i - changedAt < settling || !(Math.abs(away[i]!) >= settings.leastDegC)) continue;
    if (Math.abs(lastBefore(away, i - back)) - Math.abs(away[i]!) > NEARER_DEG_C) continue;
    if (isShared(away[i]!, peersAway, i, settings.leastDegC)) continue;
    const last = runs.at(-1);
    if (last && i - last.to <= bridge && last.sign === Math.sign(away[i]!)) last.to = i + 1;
    else runs.push({ from: i, to: i + 1, sign: Math.sign(away[i]!) });
  }
  // Slow logs leave the places between their readings empty.
  return { runs, onPlaces: Math.max(1, onPlaces * placesPerSampleOf(zone, digest.periodMs)) };
}

/** The nearest value at or before a place, within an hour's places; NaN for none. */
function lastBefore(values: Float64Array, place: number): number {
  for (let i = place; i >= 0 && i > place - 60; i--) if (!Number.isNaN(values[i]!)) return values[i]!;
  return NaN;
}

/** Reading less set point where heat is called for, else NaN. */
function awayOf({ digest }: Evidence, zone: Zone): Float64Array {
  const { meanDegC, setpointDegC } = digest.zones[zone.index]!;
  return new Float64Array(digest.length).map((_, i) =>
    setpointDegC[i]! > WARMEST_ROOM_DEG_C ? meanDegC[i]! - setpointDegC[i]! : NaN,
  );
}

/** Half of the peers away on the same side: the machine starts, stops or lost its supply. */
function isShared(away: number, peersAway: readonly Float64Array[], i: number, leastDegC: number): boolean {
  const same = peersAway.filter((peer) => peer[i]! * Math.sign(away) >= leastDegC).length;
  return same > 0 && same >= peersAway.length / 2;
}
