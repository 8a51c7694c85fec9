import type { Evidence } from '../../../model/detector.js';
import { median } from '../../../maths/quantile.js';
import { coldRoomsByHour } from './cold-hours.js';
import { oncePer } from '../basics/memo.js';

/** Fewer cold hours show no movement (own choice: a night and a half). */
const LEAST_HOURS = 12;
/** Hours at either end of the readings that may be single bad looks (own choice). */
const SINGLE_LOOKS = 2;
/** Smaller movements are draughts and lags behind the room, which neighbours share (own choice). */
const SMALLEST_DEG_C = 1;
/** Zones of one reference keep their difference to this share of the movement, or to what an hour's look leaves: lags behind the room differ (own choice). */
const LARGEST_APART_SHARE = 0.2;
const LOOK_DEG_C = 0.25;
/** A shift stays for hours on end; heat that lags behind shows at the beginning of each soak only (own choice). */
const LEAST_RUN_HOURS = 5;
/** With fewer zones than this a machine does not tell its room by itself, nor do those of other machines (own choice). */
const ENOUGH_ZONES = 5;

/** Zones of a machine whose readings moved as one against all others while everything was cold. */
export interface MovingGroup {
  readonly zones: readonly number[];
  readonly otherCount: number;
  readonly startMs: number;
  readonly endMs: number;
  /** Largest movement from the level of the first hours, °C with its sign. */
  readonly degC: number;
  /** How far the members moved against each other, as a share of that. */
  readonly apartShare: number;
}

/**
 * Groups of zones that share what moves them: an input card or its reference. Each zone's difference from the room
 * moves, the difference between the zones stays still. Two sensors that drift by themselves do not keep that.
 *
 * @returns Empty where the log never shows enough zones cold. Never throws.
 */
export const movingTogetherOf = oncePer((evidence: Evidence): readonly MovingGroup[] => {
  const machines = [...new Set(evidence.zones.map(({ machine }) => machine))];
  return machines.flatMap((machine) => {
    const known = knownZones(evidence);
    const own = known.filter((index) => evidence.zones[index]!.machine === machine);
    if (own.length < ENOUGH_ZONES) return groupsOf(looksOf(evidence, own, known));
    // Where more than half of a machine moved, its rest seems to have: other machines tell which. All of it may only
    // stand in another part of the hall.
    const others = known.length - own.length;
    const byPlant =
      others < ENOUGH_ZONES
        ? []
        : groupsOf(looksOf(evidence, own, known)).filter(({ zones }) => zones.length < own.length);
    return byPlant.length > 0 ? byPlant : groupsOf(looksOf(evidence, own, own));
  });
});

interface Looks {
  readonly timeMs: readonly number[];
  /** Difference from the room hour by hour, NaN where a zone was not cold; by zone index, of zones known for long enough. */
  readonly byZone: ReadonlyMap<number, readonly number[]>;
  /** How many zones tell the room. */
  readonly judgeCount: number;
}

/** Zones that were cold for long enough. */
const knownZones = oncePer((evidence: Evidence): readonly number[] => {
  const hours = coldRoomsByHour(evidence);
  return evidence.zones
    .map(({ index }) => index)
    .filter((index) => hours.filter(({ roomDegC }) => !Number.isNaN(roomDegC[index]!)).length >= LEAST_HOURS);
});

/** @param own Zones looked at. @param judges Zones that tell the room: it is what most of them say. */
function looksOf(evidence: Evidence, own: readonly number[], judges: readonly number[]): Looks {
  const hours = coldRoomsByHour(evidence);
  const shared = hours.filter(
    ({ roomDegC }) => judges.filter((z) => !Number.isNaN(roomDegC[z]!)).length > judges.length / 2,
  );
  const usual = judges.map((z) => median(shared.map(({ roomDegC }) => roomDegC[z]! - medianOf(roomDegC, judges))));
  // Once more with the zones brought to one level, so that one that is missing for once does not shift the room.
  const room = shared.map(({ roomDegC }) => median(judges.map((z, k) => roomDegC[z]! - usual[k]!)));
  const byZone = new Map(own.map((z) => [z, shared.map(({ roomDegC }, h) => roomDegC[z]! - room[h]!)] as const));
  return { timeMs: shared.map(({ timeMs }) => timeMs), byZone, judgeCount: judges.length };
}

function medianOf(roomDegC: readonly number[], zones: readonly number[]): number {
  return median(zones.map((z) => roomDegC[z]!));
}

function groupsOf(looks: Looks): MovingGroup[] {
  const ranges = new Map([...looks.byZone].map(([zone, degC]) => [zone, rangeOf(degC)]));
  const left = [...ranges].filter(([, range]) => range >= SMALLEST_DEG_C).sort((a, b) => b[1] - a[1]);
  const groups: MovingGroup[] = [];
  while (left.length > 1) {
    const [[first]] = left as [[number, number]];
    const zones = left
      .map(([zone]) => zone)
      .filter((zone) => zone === first || areTogether(looks, ranges, first, zone));
    for (const zone of zones)
      left.splice(
        left.findIndex(([other]) => other === zone),
        1,
      );
    // Of two halves nobody can say which one moved.
    const group = zones.length > 1 && zones.length < looks.judgeCount / 2 ? groupOf(looks, zones) : null;
    if (group) groups.push(group);
  }
  return groups;
}

/** How far a zone moved, single looks left out; 0 where too little is known. */
function rangeOf(degC: readonly number[]): number {
  const known = degC.filter((value) => !Number.isNaN(value)).sort((a, b) => a - b);
  return known.length < LEAST_HOURS ? 0 : known.at(-1 - SINGLE_LOOKS)! - known[SINGLE_LOOKS]!;
}

function apartDegC({ byZone }: Looks, one: number, other: number): number {
  const apart = byZone.get(one)!.map((value, h) => value - byZone.get(other)![h]!);
  return apart.filter((value) => !Number.isNaN(value)).length < LEAST_HOURS ? Infinity : rangeOf(apart);
}

function areTogether(looks: Looks, ranges: ReadonlyMap<number, number>, one: number, other: number): boolean {
  const movement = Math.min(ranges.get(one)!, ranges.get(other)!);
  return apartDegC(looks, one, other) <= Math.max(LARGEST_APART_SHARE * movement, LOOK_DEG_C);
}

/** The group's common movement; null where it is no lasting one. */
function groupOf(looks: Looks, zones: readonly number[]): MovingGroup | null {
  const common = looks.timeMs.flatMap((timeMs, h) => {
    const degC = median(zones.map((z) => looks.byZone.get(z)![h]!));
    return Number.isNaN(degC) ? [] : [{ timeMs, degC }];
  });
  const firstDegC = median(common.slice(0, LEAST_HOURS / 2).map(({ degC }) => degC));
  const moved = common.map(({ degC }) => degC - firstDegC);
  const byDistance = [...moved].sort((a, b) => Math.abs(b) - Math.abs(a));
  const degC = byDistance[SINGLE_LOOKS] ?? 0;
  const isAway = moved.map((value) => value / degC > 0.5);
  const runs = isAway.filter((away, h) => away && !isAway[h - 1]).length;
  const awayHours = isAway.filter(Boolean).length;
  if (runs === 0 || awayHours / runs < LEAST_RUN_HOURS) return null;
  return {
    zones,
    otherCount: looks.judgeCount - zones.length,
    startMs: common[isAway.indexOf(true)]!.timeMs,
    endMs: common[isAway.lastIndexOf(true)]!.timeMs,
    degC,
    apartShare: Math.max(...zones.slice(1).map((zone) => apartDegC(looks, zones[0]!, zone))) / Math.abs(degC),
  };
}
