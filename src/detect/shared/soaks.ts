import type { Evidence } from '../../model/detector.js';
import type { ZoneDigest } from '../../model/digest.js';
import { median } from '../../maths/quantile.js';
import { noiseSd } from '../../maths/spread.js';
import { timeConstantsOf } from './cool-downs.js';
import { livesOf } from './lives.js';
import { oncePer } from './memo.js';
import { resolutionDegCOf, samplingMsOf } from './sampling.js';
import { lineOf } from './windows.js';
import { WARMEST_ROOM_DEG_C, zoneState, zoneStatesOf } from './zone-state.js';

/** A soak is looked at hour by hour: long enough for a slope against noise, short against the room's own day. */
const HOUR_MS = 3_600_000;
/** Points of one long soak (a weekend) are this far apart, so that a drift inside it still shows (own choice). */
const POINT_MS = 4 * HOUR_MS;
/** Still decaying by more than this, the exponential tail is no longer sure enough to be taken off (own choice). */
const LARGEST_LAG_DEG_C = 4;
/** The lag taken off is known to this share: time constants differ a little between fast and slow parts (own choice). */
const LAG_ERROR_SHARE = 0.2;
/** A zone and two peers: with one peer alone nobody can say which of the two is off. */
const LEAST_ZONES = 3;
/** Two soak points of a healthy zone differ by draughts and neighbours by at least this much (own choice). */
const DRAUGHT_DEG_C = 0.03;
/** Periods above the warmest room that show a heated zone; a few may be spikes (own choice). */
const WARM_PLACES = 10;

/** One look at a cold zone: its reading against the median of its peers, lag of either taken off. */
export interface SoakPoint {
  readonly startMs: number;
  readonly endMs: number;
  readonly timeMs: number;
  readonly offsetDegC: number;
  readonly uncertaintyDegC: number;
  /** Room temperature by the peers. */
  readonly roomDegC: number;
  readonly peerCount: number;
}

export interface Soaks {
  readonly points: readonly SoakPoint[];
  /** Why there are none. */
  readonly unable: string | null;
}

/** An hour in which a zone was cold: room temperature as this zone tells it, its slow lag behind the room taken off. */
interface ColdHour {
  readonly hour: number;
  readonly roomDegC: number;
  readonly errorDegC: number;
}

/** Cold hours of every zone, by hour of the digest. */
const coldHoursOf = oncePer((evidence: Evidence): readonly ReadonlyMap<number, ColdHour>[] =>
  evidence.zones.map(({ index }) => coldHours(evidence, index)),
);

/**
 * Cold hours with each zone's usual offset from the median of its machine taken off, life by life: so neither a peer
 * that is missing for once nor one that got a new sensor shifts the others.
 */
const levelledHoursOf = oncePer((evidence: Evidence): readonly ReadonlyMap<number, ColdHour>[] => {
  const hours = coldHoursOf(evidence);
  return evidence.zones.map(({ index }) => {
    const group = peerGroup(evidence, index).map((peer) => hours[peer]!);
    const lifeAt = (hour: number) =>
      livesOf(evidence)[index]!.filter((at) => at <= evidence.digest.startMs + hour * HOUR_MS).length;
    const offsets = new Map<number, number[]>();
    for (const { hour, roomDegC } of hours[index]!.values()) {
      const offset = roomDegC - median(group.flatMap((peer) => peer.get(hour)?.roomDegC ?? []));
      const life = lifeAt(hour);
      offsets.set(life, [...(offsets.get(life) ?? []), offset]);
    }
    const usual = new Map([...offsets].map(([life, list]) => [life, median(list)]));
    const levelled = [...hours[index]!].map(
      ([hour, cold]) => [hour, { ...cold, roomDegC: cold.roomDegC - usual.get(lifeAt(hour))! }] as const,
    );
    return new Map(levelled);
  });
});

/**
 * Cold soaks of one zone in time order, against the peers of its machine (or of the plant where the machine has fewer
 * than three zones). A zone with zero output follows the room as dT/dt = (room − T)/τ, so T + τ·dT/dt is the room
 * temperature as that zone tells it, also while it still decays.
 *
 * @param leftOut Zones whose readings are no reference, because they have a fault of their own.
 * @returns Never throws.
 */
export function soaksOf(evidence: Evidence, index: number, leftOut: ReadonlySet<number> = nobody): Soaks {
  const name = evidence.zones[index]!.name;
  const hours = coldHoursOf(evidence);
  const group = peerGroup(evidence, index);
  if (group.length < LEAST_ZONES) return none(`Zone ${name}: ${group.length} zones, needed ${LEAST_ZONES}.`);
  if (!isSeenHeated(evidence, index))
    return none(`Zone ${name}: no output is logged and it was never warm, so nothing shows when its heat is off.`);
  if (hours[index]!.size === 0) return none(`Zone ${name} was never cold for an hour with its heat off.`);
  const peers = group.filter((peer) => peer !== index && !leftOut.has(peer));
  const leastPeers = Math.min(LEAST_ZONES - 1, Math.max(1, peers.length));
  const levelled = levelledHoursOf(evidence);
  const single = [...hours[index]!.values()].flatMap((own) =>
    lookAt(
      own,
      peers.flatMap((peer) => levelled[peer]!.get(own.hour) ?? []),
      leastPeers,
    ),
  );
  const looks = withUnrest(single);
  if (looks.length === 0) return none(`Zone ${name}: its peers were not cold at the same time.`);
  return { points: joinLooks(looks, evidence.digest.startMs), unable: null };
}

const nobody: ReadonlySet<number> = new Set();

function peerGroup({ zones }: Evidence, index: number): number[] {
  const machine = zones.filter((z) => z.machine === zones[index]!.machine);
  return (machine.length >= LEAST_ZONES ? machine : zones).map((z) => z.index);
}

const none = (unable: string): Soaks => ({ points: [], unable });

/** Room temperature at the last cold hour of the plant, by the median of the zones cold then; NaN where never cold. */
export const roomOf = oncePer((evidence: Evidence): number => {
  const hours = coldHoursOf(evidence);
  const last = Math.max(-1, ...hours.flatMap((zone) => [...zone.keys()]));
  return median(hours.flatMap((zone) => zone.get(last)?.roomDegC ?? []));
});

/** Room temperature hour by hour where at least one zone was cold, by the median of those, in time order. */
export const roomSeriesOf = oncePer((evidence: Evidence): { timeMs: Float64Array; degC: Float64Array } => {
  const byHour = new Map<number, number[]>();
  for (const hours of levelledHoursOf(evidence)) {
    for (const { hour, roomDegC } of hours.values()) byHour.set(hour, [...(byHour.get(hour) ?? []), roomDegC]);
  }
  const hours = [...byHour.keys()].sort((a, b) => a - b);
  return {
    timeMs: Float64Array.from(hours, (hour) => evidence.digest.startMs + (hour + 0.5) * HOUR_MS),
    degC: Float64Array.from(hours, (hour) => median(byHour.get(hour)!)),
  };
});

/** Usual room temperature over the window, by the median of all cold hours; NaN where never cold. */
export const usualRoomOf = oncePer((evidence: Evidence): number =>
  median(coldHoursOf(evidence).flatMap((zone) => [...zone.values()].map(({ roomDegC }) => roomDegC))),
);

/**
 * A soak is proven by heat that is off. Where no output is logged, that takes a zone that was warm at another time: an
 * outdoor sensor or an air duct is always below the warmest room, and its peers have other temperatures by right.
 */
function isSeenHeated({ digest, zones }: Evidence, index: number): boolean {
  const { meanDegC, setpointDegC } = digest.zones[index]!;
  const warmPlaces = (degC: Float32Array) => degC.reduce((n, value) => (value > WARMEST_ROOM_DEG_C ? n + 1 : n), 0);
  return zones[index]!.has.output || warmPlaces(meanDegC) >= WARM_PLACES || warmPlaces(setpointDegC) >= WARM_PLACES;
}

function coldHours(evidence: Evidence, index: number): Map<number, ColdHour> {
  const { digest, zones } = evidence;
  if (!isSeenHeated(evidence, index)) return new Map();
  const states = zoneStatesOf(evidence)[index]!;
  const zone = digest.zones[index]!;
  const tauHours = timeConstantsOf(evidence)[index]!;
  const places = Math.max(1, Math.round(HOUR_MS / digest.periodMs));
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
  return {
    hour,
    count,
    roomDegC: mean + lagDegC,
    errorDegC: Math.hypot(meanError, lagError, LAG_ERROR_SHARE * lagDegC),
    isCold: mean <= WARMEST_ROOM_DEG_C && Math.abs(lagDegC) <= LARGEST_LAG_DEG_C,
  };
}

interface Look {
  readonly hour: number;
  readonly offsetDegC: number;
  readonly varianceDegC2: number;
  readonly roomDegC: number;
  readonly peerCount: number;
}

function lookAt(own: ColdHour, there: readonly ColdHour[], leastPeers: number): Look[] {
  if (there.length < leastPeers) return [];
  const roomDegC = median(there.map((peer) => peer.roomDegC));
  // Variance of a median of n: about π/2 times that of the mean (normal data, textbook); of one or two it is the mean.
  const factor = there.length > 2 ? Math.PI / 2 : 1;
  const peerVariance = (factor * there.reduce((sum, peer) => sum + peer.errorDegC ** 2, 0)) / there.length ** 2;
  const offsetDegC = own.roomDegC - roomDegC;
  const varianceDegC2 = own.errorDegC ** 2 + peerVariance;
  return [{ hour: own.hour, offsetDegC, varianceDegC2, roomDegC, peerCount: there.length }];
}

/** An offset that still moves from hour to hour is a tail of heat (frame, neighbours) and that much less sure. */
function withUnrest(looks: readonly Look[]): Look[] {
  return looks.map((look, i) => {
    const near = [looks[i - 1], looks[i + 1]].filter((other) => other && Math.abs(other.hour - look.hour) === 1);
    const steps = near.map((other) => Math.abs(other!.offsetDegC - look.offsetDegC));
    const unrest = steps.length > 0 ? Math.min(...steps) : 0;
    return { ...look, varianceDegC2: look.varianceDegC2 + unrest ** 2 };
  });
}

/** Neighbouring hours of one soak become one point, weighted by how sure each is. */
function joinLooks(looks: readonly Look[], startMs: number): SoakPoint[] {
  const points: SoakPoint[] = [];
  const longest = POINT_MS / HOUR_MS;
  for (let from = 0; from < looks.length;) {
    let to = from + 1;
    while (to < looks.length && to - from < longest && looks[to]!.hour - looks[to - 1]!.hour <= 2) to++;
    points.push(pointOf(looks.slice(from, to), startMs));
    from = to;
  }
  return points;
}

function pointOf(looks: readonly Look[], startMs: number): SoakPoint {
  const total = looks.reduce((sum, look) => sum + 1 / look.varianceDegC2, 0);
  const average = (of: (look: Look) => number) =>
    looks.reduce((sum, look) => sum + of(look) / look.varianceDegC2, 0) / total;
  return {
    startMs: startMs + looks[0]!.hour * HOUR_MS,
    endMs: startMs + (looks.at(-1)!.hour + 1) * HOUR_MS,
    timeMs: startMs + (average((look) => look.hour) + 0.5) * HOUR_MS,
    offsetDegC: average((look) => look.offsetDegC),
    uncertaintyDegC: Math.hypot(Math.sqrt(1 / total), DRAUGHT_DEG_C),
    roomDegC: looks.at(-1)!.roomDegC,
    peerCount: Math.round(average((look) => look.peerCount)),
  };
}

/** Room temperature as each zone tells it, hour by hour in time order; NaN where a zone was not cold. */
export const coldRoomsByHour = oncePer(
  (evidence: Evidence): readonly { readonly timeMs: number; readonly roomDegC: readonly number[] }[] => {
    const zones = coldHoursOf(evidence);
    const hours = [...new Set(zones.flatMap((zone) => [...zone.keys()]))].sort((a, b) => a - b);
    return hours.map((hour) => ({
      timeMs: evidence.digest.startMs + (hour + 0.5) * HOUR_MS,
      roomDegC: zones.map((zone) => sureRoomDegC(zone.get(hour))),
    }));
  },
);

/** A room temperature less sure than this says nothing of a card's shift (own choice). */
const SURE_DEG_C = 0.4;

function sureRoomDegC(cold: ColdHour | undefined): number {
  return cold && cold.errorDegC <= SURE_DEG_C ? cold.roomDegC : NaN;
}
