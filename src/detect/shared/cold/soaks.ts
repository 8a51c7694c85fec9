import type { PlantDigest } from '../../../model/digest.js';
import type { Evidence } from '../../../model/detector.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import { coldHoursOf, hourStartMs, isSeenHeated, type ColdHour } from './cold-hours.js';
import { newSensorsMsOf } from '../opens/repair-lives.js';
import { oncePer } from '../basics/memo.js';
import { movingTogetherOf } from './moving-together.js';

/** Points of one long soak (a weekend) are this far apart, so that a drift inside it still shows (own choice). */
const POINT_MS = 4 * HOUR_MS;
/** A zone and two peers: with one peer alone nobody can say which of the two is off. */
const LEAST_ZONES = 3;
/** Two soak points of a healthy zone differ by draughts and neighbours by at least this much (own choice). */
const DRAUGHT_DEG_C = 0.03;

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

/** The cold soaks of one zone, in time order. */
export interface Soaks {
  readonly points: readonly SoakPoint[];
  /** Why there are none. */
  readonly unable: string | null;
}

/**
 * Cold hours with each zone's usual offset from the median of its machine taken off, life by life: so neither a peer
 * that is missing for once nor one that got a new sensor shifts the others.
 */
const levelledHoursOf = oncePer((evidence: Evidence): readonly ReadonlyMap<number, ColdHour>[] => {
  const hours = coldHoursOf(evidence);
  return evidence.zones.map(({ index }) => {
    const group = unmoved(evidence, peerGroup(evidence, index)).map((peer) => hours[peer]!);
    const lifeAt = (hour: number) =>
      newSensorsMsOf(evidence)[index]!.filter((at) => at <= hourStartMs(evidence.digest, hour)).length;
    const offsets = new Map<number, number[]>();
    for (const { hour, roomDegC } of hours[index]!.values()) {
      const offset = roomDegC - median(group.flatMap((peer) => peer.get(hour)?.roomDegC ?? []));
      listAt(offsets, lifeAt(hour)).push(offset);
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
  if (looks.length === 0) return none(`Zone ${name}: its peers were not cold for two hours at the same time.`);
  return { points: joinLooks(looks, evidence.digest), unable: null };
}

const nobody: ReadonlySet<number> = new Set();

/** Zones but those that moved together: a card that shifts takes the median of a small machine along. */
function unmoved(evidence: Evidence, zones: readonly number[]): readonly number[] {
  const moved = new Set(movingTogetherOf(evidence).flatMap((group) => group.zones));
  const rest = zones.filter((zone) => !moved.has(zone));
  return rest.length >= LEAST_ZONES - 1 ? rest : zones;
}

function peerGroup({ zones }: Evidence, index: number): number[] {
  const machine = zones.filter((z) => z.machine === zones[index]!.machine);
  return (machine.length >= LEAST_ZONES ? machine : zones).map((z) => z.index);
}

const none = (unable: string): Soaks => ({ points: [], unable });

/** Room temperature hour by hour where at least one zone was cold, by the median of those, in time order. */
export const roomSeriesOf = oncePer((evidence: Evidence): { timeMs: Float64Array; degC: Float64Array } => {
  const byHour = new Map<number, number[]>();
  for (const hours of levelledHoursOf(evidence)) {
    for (const { hour, roomDegC } of hours.values()) listAt(byHour, hour).push(roomDegC);
  }
  const hours = [...byHour.keys()].sort((a, b) => a - b);
  return {
    timeMs: Float64Array.from(hours, (hour) => hourStartMs(evidence.digest, hour + 0.5)),
    degC: Float64Array.from(hours, (hour) => median(byHour.get(hour)!)),
  };
});

function listAt(lists: Map<number, number[]>, key: number): number[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
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

/**
 * An offset that still moves from hour to hour is a tail of heat (frame, neighbours) and that much less sure. An hour
 * alone, such as the last of a log that ends while the machine cools, cannot show whether it moves: it may move as much
 * as any other hour of this zone does, and tells nothing where there is no other.
 */
function withUnrest(looks: readonly Look[]): Look[] {
  const unrests = looks.map((look, i) => {
    const near = [looks[i - 1], looks[i + 1]].filter((other) => other && Math.abs(other.hour - look.hour) === 1);
    return Math.min(...near.map((other) => Math.abs(other!.offsetDegC - look.offsetDegC))); // Infinity: none is near
  });
  const largest = unrests.filter(Number.isFinite).reduce((a, b) => Math.max(a, b), -Infinity);
  if (largest === -Infinity) return [];
  return looks.map((look, i) => ({ ...look, varianceDegC2: look.varianceDegC2 + Math.min(unrests[i]!, largest) ** 2 }));
}

/** Neighbouring hours of one soak become one point, weighted by how sure each is. */
function joinLooks(looks: readonly Look[], digest: PlantDigest): SoakPoint[] {
  const points: SoakPoint[] = [];
  const longest = POINT_MS / HOUR_MS;
  for (let from = 0; from < looks.length;) {
    let to = from + 1;
    while (to < looks.length && to - from < longest && looks[to]!.hour - looks[to - 1]!.hour <= 2) to++;
    points.push(pointOf(looks.slice(from, to), digest));
    from = to;
  }
  return points;
}

function pointOf(looks: readonly Look[], digest: PlantDigest): SoakPoint {
  const total = looks.reduce((sum, look) => sum + 1 / look.varianceDegC2, 0);
  const average = (of: (look: Look) => number) =>
    looks.reduce((sum, look) => sum + of(look) / look.varianceDegC2, 0) / total;
  return {
    startMs: hourStartMs(digest, looks[0]!.hour),
    endMs: hourStartMs(digest, looks.at(-1)!.hour + 1),
    timeMs: hourStartMs(digest, average((look) => look.hour) + 0.5),
    offsetDegC: average((look) => look.offsetDegC),
    uncertaintyDegC: Math.hypot(Math.sqrt(1 / total), DRAUGHT_DEG_C),
    roomDegC: looks.at(-1)!.roomDegC,
    peerCount: Math.round(average((look) => look.peerCount)),
  };
}
