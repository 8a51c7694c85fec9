import type { Evidence } from '../../../model/detector.js';
import type { PlantDigest, ZoneDigest } from '../../../model/digest.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { meanBetween } from '../../../maths/mean-between.js';
import { median } from '../../../maths/quantile.js';
import { noiseSd } from '../../../maths/spread.js';
import { timeConstantsOf } from './cool-downs.js';
import { oncePer } from '../basics/memo.js';
import { resolutionDegCOf, samplingMsOf } from '../basics/sampling.js';
import { lineOf } from '../readings/windows.js';
import { zoneState, zoneStatesOf } from '../readings/zone-state.js';
import { WARMEST_ROOM_DEG_C } from '../basics/warmest-room.js';
import { highest } from '../../../maths/extremes.js';

/** Still decaying by more than this, the exponential tail is no longer sure enough to be taken off (own choice). */
const LARGEST_LAG_DEG_C = 4;
/** The lag taken off is known to this share: time constants differ a little between fast and slow parts (own choice). */
const LAG_ERROR_SHARE = 0.2;
/** Periods above the warmest room that show a heated zone; a few may be spikes (own choice). */
const WARM_PLACES = 10;

/** Places of the digest that make an hour, or the nearest to one that its period allows. */
function hourPlacesOf({ periodMs }: PlantDigest): number {
  return Math.max(1, Math.round(HOUR_MS / periodMs));
}

/** When an hour of {@link coldHoursOf} begins: in a long log, whose periods are long, 60 minutes are no whole number of them. */
export function hourStartMs(digest: PlantDigest, hour: number): number {
  return digest.startMs + hour * hourPlacesOf(digest) * digest.periodMs;
}

/**
 * An hour in which a zone was cold: room temperature as this zone tells it, its slow lag behind the room taken off. An
 * hour is long enough for a slope against noise, and short against the room's own day.
 */
export interface ColdHour {
  readonly hour: number;
  readonly roomDegC: number;
  readonly errorDegC: number;
}

/** Cold hours of every zone, by hour of the digest. */
export const coldHoursOf = oncePer((evidence: Evidence): readonly ReadonlyMap<number, ColdHour>[] =>
  evidence.zones.map(({ index }) => coldHours(evidence, index)),
);

/** Room temperature at the last cold hour of the plant, by the median of the zones cold then; NaN where never cold. */
export const roomOf = oncePer((evidence: Evidence): number => {
  const hours = coldHoursOf(evidence);
  const last = Math.max(-1, highest(hours.flatMap((zone) => [...zone.keys()])));
  return median(hours.flatMap((zone) => zone.get(last)?.roomDegC ?? []));
});

/** Usual room temperature over the window, by the median of all cold hours; NaN where never cold. */
const usualRoomOf = oncePer((evidence: Evidence): number =>
  median(coldHoursOf(evidence).flatMap((zone) => [...zone.values()].map(({ roomDegC }) => roomDegC))),
);

/** Room temperature where the log never shows it (common practice). */
const ASSUMED_ROOM_DEG_C = 22;

/** The usual room, or where the log never shows one the room of most halls; never NaN. */
export function assumedRoomOf(evidence: Evidence): number {
  const roomDegC = usualRoomOf(evidence);
  return Number.isNaN(roomDegC) ? ASSUMED_ROOM_DEG_C : roomDegC;
}

/**
 * A soak is proven by heat that is off. Where no output is logged, that takes a zone that was warm at another time: an
 * outdoor sensor or an air duct is always below the warmest room, and its peers have other temperatures by right.
 */
export function isSeenHeated({ digest, zones }: Evidence, index: number): boolean {
  const { meanDegC, setpointDegC } = digest.zones[index]!;
  const warmPlaces = (degC: Float32Array) => degC.reduce((n, value) => (value > WARMEST_ROOM_DEG_C ? n + 1 : n), 0);
  return zones[index]!.has.output || warmPlaces(meanDegC) >= WARM_PLACES || warmPlaces(setpointDegC) >= WARM_PLACES;
}

function coldHours(evidence: Evidence, index: number): Map<number, ColdHour> {
  const { digest, zones } = evidence;
  if (!isSeenHeated(evidence, index)) return new Map();
  const states = zoneStatesOf(evidence)[index]!;
  const zone = digest.zones[index]!;
  const places = hourPlacesOf(digest);
  const tauHours = (timeConstantsOf(evidence)[index]! * HOUR_MS) / (places * digest.periodMs); // in hours of so many places
  const hours = new Map<number, ColdHour>();
  const leastCount = Math.max(2, 0.7 * Math.min(places, HOUR_MS / samplingMsOf(zones[index]!)));
  const stepErrorDegC = resolutionDegCOf(zones[index]!) / Math.sqrt(12); // of one rounded reading
  for (let hour = 0; (hour + 1) * places <= digest.length; hour++) {
    const from = hour * places;
    if (!isOffThroughout(states, from, from + places)) continue;
    const cold = coldHour(zone, hour, from, from + places, tauHours, stepErrorDegC);
    if (cold.count >= leastCount && cold.isCold) hours.set(hour, cold);
  }
  return hours;
}

function isOffThroughout(states: Uint8Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (states[i] !== zoneState.off) return false;
  return true;
}

function coldHour(zone: ZoneDigest, hour: number, from: number, to: number, tauHours: number, stepErrorDegC: number) {
  const { mean, slope, count } = lineOf(zone.meanDegC, from, to);
  const lagDegC = slope * (to - from) * (Number.isNaN(tauHours) ? 0.5 : tauHours);
  // Rounding errors do not average out while the true value rests, so one step's error stays in the mean.
  const noiseDegC = Math.max(noiseSd(zone.meanDegC.subarray(from, to)), stepErrorDegC / 2);
  const meanError = Math.hypot(noiseDegC / Math.sqrt(count), stepErrorDegC / 3);
  const lagError = (noiseDegC * Math.sqrt(12 / count) * lagDegC) / (slope * (to - from) || 1);
  const bendDegC = bendOf(zone.meanDegC, from, to, Math.hypot(noiseDegC * Math.sqrt(4.5 / count), stepErrorDegC));
  return {
    hour,
    count,
    roomDegC: mean + lagDegC,
    errorDegC: Math.hypot(meanError, lagError, LAG_ERROR_SHARE * lagDegC, bendDegC),
    isCold: mean <= WARMEST_ROOM_DEG_C && Math.abs(lagDegC) <= LARGEST_LAG_DEG_C,
  };
}

/** Bends of less than this many of their own standard deviations are noise (own choice). */
const BEND_SDS = 3;

/**
 * How far the outer thirds of an hour lie from the middle one, beyond chance: no line holds for a light zone that has just
 * been switched off. The mean of two thirds against one has √4.5 times the standard deviation of the mean of all.
 */
function bendOf(degC: Float32Array, from: number, to: number, errorDegC: number): number {
  const third = Math.floor((to - from) / 3);
  const [first, middle, last] = [from, from + third, to - third].map((at) => meanBetween(degC, at, at + third));
  const bendDegC = Math.abs((first! + last!) / 2 - middle!);
  return bendDegC > BEND_SDS * errorDegC ? bendDegC : 0;
}

/** Room temperature as each zone tells it, hour by hour in time order; by zone index, NaN where a zone was not cold. */
export type RoomHours = readonly { readonly timeMs: number; readonly roomDegC: readonly number[] }[];

/** The hours in which any zone was cold, in time order. A zone that is less sure than {@link SURE_DEG_C} counts as not cold. */
export const coldRoomsByHour = oncePer((evidence: Evidence): RoomHours => {
  const zones = coldHoursOf(evidence);
  const hours = [...new Set(zones.flatMap((zone) => [...zone.keys()]))].sort((a, b) => a - b);
  return hours.map((hour) => ({
    timeMs: hourStartMs(evidence.digest, hour + 0.5),
    roomDegC: zones.map((zone) => sureRoomDegC(zone.get(hour))),
  }));
});

/** A room temperature less sure than this says nothing of a card's shift (own choice). */
const SURE_DEG_C = 0.4;

function sureRoomDegC(cold: ColdHour | undefined): number {
  return cold && cold.errorDegC <= SURE_DEG_C ? cold.roomDegC : NaN;
}
