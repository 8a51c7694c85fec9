import { HOUR_MS } from '../../../model/time-units.js';
import { highest } from '../../../maths/extremes.js';
import { median } from '../../../maths/quantile.js';
import { normalTwoSidedP } from '../../../maths/normal.js';
import { studentTwoSided } from '../../../maths/student.js';
import type { Block } from './card-blocks.js';
import { type RoomHours } from './cold-hours.js';

/** Hours that both sides must show (own choice: a night and a half). */
const LEAST_HOURS = 12;
/** Hours at either end of a course that may be single bad looks (own choice). */
const SINGLE_LOOKS = 2;
/** Smaller movements are draughts and lags behind the room, which neighbours share (own choice). */
const SMALLEST_DEG_C = 1;
/** A shift stays for hours on end; heat that lags behind shows at the beginning of each soak only (own choice). */
const LEAST_RUN_HOURS = 5;
/** Zones of one card follow its course to this share; less is no common one (own choice). */
const LARGEST_APART_SHARE = 0.25;
/** So long a soak has left the heat of the machine behind (common practice: three time constants of a heavy frame). */
const LATE_HOURS = 6;
/** Zones of one machine follow the room to this, draughts and lags taken together, however alike few of them look (own choice). */
const DRAUGHT_DEG_C = 0.15;
/** Air at two machines of a hall differs by this much more on one day than on another (common practice). */
const HALL_DEG_C = 1;
/** The room of one machine by itself differs by this much from one day, or hour of it, to another (common practice). */
const DAY_DEG_C = 3;

/** A block of zones that moved against the others. */
export interface BlockMove {
  /** Zones that moved; one in three of the block may not have, for a fault of its own. */
  readonly zones: readonly number[];
  /** Zones that stayed. */
  readonly others: readonly number[];
  /** Between the last hour at the level of the first ones and the next. */
  readonly startMs: number;
  readonly endMs: number;
  /** Largest movement from the level of the first hours, °C with its sign. */
  readonly degC: number;
  /** Standard deviation of how far single zones followed that course or did not, as a share of it. */
  readonly apartShare: number;
  /** Chance that zones which have nothing in common move so, all blocks that were tried taken into account. */
  readonly chancePValue: number;
  /** Chance that it was the other side that moved. */
  readonly otherSideShare: number;
}

/**
 * Asks whether a block moved as one while the others stayed. The unit is the zone, not the hour: what draughts, lags and
 * heat from neighbours do to zones is the same for hours on end, and shows in how unlike the zones of either side are.
 *
 * @param triedCount Blocks that are asked, by which chance is multiplied (Bonferroni).
 * @returns null where nothing lasting moved or too little is known. Never throws.
 */
export function testBlock(hours: RoomHours, block: Block, triedCount: number): BlockMove | null {
  const others = block.mates.length > 1 ? block.mates : block.elsewhere.flat();
  if (others.length < 2) return null;
  const first = courseOf(hours, block.zones, others);
  if (!first) return null;
  const zones = followers(hours, block.zones, others, first);
  if (zones.length < 2) return null;
  const course = zones.length === block.zones.length ? first : courseOf(hours, zones, others);
  if (!course) return null;
  const followed = zones.map((zone) => followedShare(hours, zone, others, course)).filter(Number.isFinite);
  const stayed = others.map((zone) => followedShare(hours, zone, others, course)).filter(Number.isFinite);
  if (followed.length < 2 || stayed.length < 2) return null;
  const apartShare = Math.max(pooledSd(followed, stayed), DRAUGHT_DEG_C / Math.abs(course.degC));
  if (apartShare > LARGEST_APART_SHARE) return null;
  const shares = { followed, stayed, apartShare };
  const isOwnMachine = others === block.mates;
  if (!isOwnMachine && !isSeenLate(course)) return null;
  const once = isOwnMachine ? chanceOfZones(shares) : chanceOfMachine(shares, course.degC, block.elsewhere.length);
  const leftOut = block.zones.length - zones.length;
  const ways = leftOut === 0 ? 1 : block.zones.length;
  return {
    zones,
    others,
    startMs: onsetOf(course),
    endMs: course.timeMs[course.isAway.lastIndexOf(true)]!,
    degC: course.degC,
    apartShare,
    chancePValue: Math.min(1, once * triedCount * ways),
    otherSideShare: isOwnMachine ? otherSide(hours, zones, block, course) : 0,
  };
}

interface Course {
  readonly timeMs: readonly number[];
  /** Places of the hours in the list. */
  readonly places: readonly number[];
  /** Movement of the block against the others from the level of the first hours. */
  readonly movedDegC: readonly number[];
  readonly degC: number;
  readonly isAway: readonly boolean[];
}

/** Course of some zones against others; null where it is short, small or comes for single hours only. */
function courseOf(hours: RoomHours, zones: readonly number[], others: readonly number[]): Course | null {
  const inside = levelOf(hours, zones);
  const outside = levelOf(hours, others);
  const places = hours.flatMap((_, h) => (Number.isNaN(inside[h]! - outside[h]!) ? [] : [h]));
  if (places.length < LEAST_HOURS) return null;
  const apart = places.map((h) => inside[h]! - outside[h]!);
  const firstDegC = median(apart.slice(0, LEAST_HOURS / 2));
  const movedDegC = apart.map((value) => value - firstDegC);
  const byDistance = [...movedDegC].sort((a, b) => Math.abs(b) - Math.abs(a));
  const degC = byDistance[SINGLE_LOOKS]!;
  if (!(Math.abs(degC) >= SMALLEST_DEG_C)) return null;
  const isAway = movedDegC.map((value) => value / degC > 0.5);
  const runs = isAway.filter((away, i) => away && !isAway[i - 1]).length;
  if (runs === 0 || isAway.filter(Boolean).length / runs < LEAST_RUN_HOURS) return null;
  return { timeMs: places.map((h) => hours[h]!.timeMs), places, movedDegC, degC, isAway };
}

/** A course is still at its first level below this share of its largest movement (own choice: beyond most draughts). */
const HOME_SHARE = 0.2;

function onsetOf({ timeMs, movedDegC, degC, isAway }: Course): number {
  const away = isAway.indexOf(true);
  const home = movedDegC.slice(0, away).findLastIndex((value) => value / degC <= HOME_SHARE);
  return home < 0 ? timeMs[away]! : (timeMs[home]! + timeMs[home + 1]!) / 2;
}

/**
 * A machine as a whole keeps warm for hours after others of the plant. What it does late in its soaks is no such tail, so
 * both levels must show there; where all soaks are short, in their second half.
 */
function isSeenLate({ timeMs, isAway }: Course): boolean {
  let age = 0;
  const ages = timeMs.map((at, i) => (age = at - (timeMs[i - 1] ?? -Infinity) <= 2 * HOUR_MS ? age + 1 : 1));
  const late = Math.min(LATE_HOURS, highest(ages) / 2);
  const lateHours = (away: boolean) => ages.filter((hours, i) => hours > late && isAway[i] === away).length;
  return lateHours(true) >= LEAST_RUN_HOURS && lateHours(false) >= LEAST_RUN_HOURS;
}

/**
 * Room as some zones tell it together, NaN where less than half of them were cold. Zones are brought to one level, so
 * that one that is missing for an hour does not shift the rest.
 */
function levelOf(hours: RoomHours, zones: readonly number[]): number[] {
  const isShared = hours.map(
    ({ roomDegC }) => 2 * zones.filter((z) => !Number.isNaN(roomDegC[z]!)).length >= zones.length,
  );
  const rough = hours.map(({ roomDegC }, h) => (isShared[h] ? median(zones.map((z) => roomDegC[z]!)) : NaN));
  const usual = zones.map((z) => median(hours.map(({ roomDegC }, h) => roomDegC[z]! - rough[h]!)));
  return hours.map(({ roomDegC }, h) => (isShared[h] ? median(zones.map((z, k) => roomDegC[z]! - usual[k]!)) : NaN));
}

/** How far one zone followed the course against the others: 1 = fully, 0 = not at all; NaN where it was seldom cold. */
function followedShare(hours: RoomHours, zone: number, others: readonly number[], course: Course): number {
  const outside = levelOf(hours, others.length > 2 ? others.filter((other) => other !== zone) : others);
  const there = course.places.flatMap((h, i) => {
    const apart = hours[h]!.roomDegC[zone]! - outside[h]!;
    return Number.isNaN(apart) ? [] : [{ apart, moved: course.movedDegC[i]! }];
  });
  if (there.length < LEAST_HOURS) return NaN;
  const mean = (of: (one: (typeof there)[number]) => number) =>
    there.reduce((sum, one) => sum + of(one), 0) / there.length;
  const movedMean = mean(({ moved }) => moved);
  const apartMean = mean(({ apart }) => apart);
  const spread = mean(({ moved }) => (moved - movedMean) ** 2);
  return mean(({ apart, moved }) => (apart - apartMean) * (moved - movedMean)) / spread;
}

/** The block without the one zone in three that follows least. */
function followers(hours: RoomHours, zones: readonly number[], others: readonly number[], course: Course): number[] {
  const shares = new Map(zones.map((zone) => [zone, followedShare(hours, zone, others, course)]));
  const middle = median([...shares.values()]);
  const known = zones.filter((zone) => !Number.isNaN(shares.get(zone)!));
  const most = Math.floor(zones.length / 3);
  const strays = known
    .filter((zone) => Math.abs(shares.get(zone)! / middle - 1) > STRAY_SHARE)
    .sort((a, b) => Math.abs(shares.get(b)! - middle) - Math.abs(shares.get(a)! - middle))
    .slice(0, Math.min(most, 1));
  return known.filter((zone) => !strays.includes(zone));
}

/** A zone of the block that follows by half more or less than the others has a fault of its own (own choice). */
const STRAY_SHARE = 0.5;

interface Shares {
  readonly followed: readonly number[];
  readonly stayed: readonly number[];
  readonly apartShare: number;
}

function pooledSd(followed: readonly number[], stayed: readonly number[]): number {
  return Math.sqrt((squares(followed) + squares(stayed)) / (followed.length + stayed.length - 2));
}

function squares(values: readonly number[]): number {
  const mean = meanOf(values);
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Two-sample t test of how far the zones of either side followed the course. */
function chanceOfZones({ followed, stayed, apartShare }: Shares): number {
  const error = apartShare * Math.sqrt(1 / followed.length + 1 / stayed.length);
  return studentTwoSided((meanOf(followed) - meanOf(stayed)) / error, followed.length + stayed.length - 2);
}

/** A whole machine against others: its air may be another, too. */
function chanceOfMachine({ followed, stayed, apartShare }: Shares, degC: number, machineCount: number): number {
  const hall = (HALL_DEG_C / Math.abs(degC)) ** 2 * (1 + 1 / machineCount);
  const error = Math.sqrt(hall + apartShare ** 2 * (1 / followed.length + 1 / stayed.length));
  return normalTwoSidedP((meanOf(followed) - meanOf(stayed)) / error);
}

/**
 * Chance that the others moved and the block stayed: by how far the room of either side went from its usual while they
 * were apart, against other machines or, where there are none, against other days; before that, each zone of the machine
 * is as likely to be on the card that moved.
 */
function otherSide(hours: RoomHours, zones: readonly number[], { mates, elsewhere }: Block, course: Course): number {
  const reference = elsewhere.flat();
  const isHall = reference.length >= 3;
  const room = isHall ? levelOf(hours, reference) : hours.map(() => 0);
  const change = (side: readonly number[]): number => {
    const level = levelOf(hours, side);
    const at = (away: boolean) =>
      median(course.places.flatMap((h, i) => (course.isAway[i] === away ? [level[h]! - room[h]!] : [])));
    return at(true) - at(false);
  };
  const sd = isHall ? HALL_DEG_C * Math.SQRT2 : DAY_DEG_C;
  const [own, others] = [change(zones), change(mates)];
  const ratio = Number.isNaN(own - others) ? 1 : Math.exp((others ** 2 - own ** 2) / (2 * sd ** 2));
  // The side whose room stayed as it was is the one that did not move.
  const odds = ratio * (zones.length / mates.length);
  return odds / (1 + odds);
}
