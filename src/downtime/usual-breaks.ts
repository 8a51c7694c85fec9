import { MINUTE_MS } from '../model/time-units.js';
import { binomialTest } from '../maths/binomial.js';
import { calendarOf } from '../maths/calendar.js';
import { intersectIntervals, lengthOf, mergeIntervals, subtractIntervals, type Interval } from '../maths/intervals.js';

/** Fewer production days than this tell no habit (own choice: a working week). */
const FEWEST_DAYS = 5;
/** A habit is kept on most days; one day in four may be worked through (own choice). */
const SHARE_OF_DAYS = 0.75;
/** Largest chance that any minute of the day passes by accident (own choice). */
const CHANCE = 0.01;
/** Shorter than this is a micro-stop, not a break (common practice). */
const SHORTEST_MINUTES = 5;
/** People are not clocks: a break begins and ends so much off its time at most (own choice). */
const RAGGED_MS = 5 * MINUTE_MS;

const MINUTES_PER_DAY = 1440;
const NOON = MINUTES_PER_DAY / 2;

/** A time at which a machine usually stands, on the plant's clock. */
export interface UsualBreak {
  /** Minutes from midnight. */
  readonly fromMinute: number;
  readonly toMinute: number;
}

export interface UsualBreaks {
  /** By time of day. */
  readonly clock: readonly UsualBreak[];
  /** The breaks that were taken, ms. */
  readonly taken: readonly Interval[];
}

/**
 * Breaks of the people: times of day at which a machine stood on most of its production days and nothing tells why.
 * A stop that recurs like that is part of the calendar, not lost time, which nobody wrote into plant.yaml.
 *
 * @param production When the machine was meant to run, ms.
 * @param stood When it stood. @param caused Time near a known cause: it tells of no habit either way.
 * @param timezone IANA name of the plant's clock.
 * @returns Empty lists where there are too few days or no habit. Never throws.
 */
export function usualBreaks(
  production: readonly Interval[],
  stood: readonly Interval[],
  caused: readonly Interval[],
  timezone: string,
): UsualBreaks {
  const due = daysOf(subtractIntervals(production, caused), timezone);
  const idle = subtractIntervals(intersectIntervals(stood, production), caused);
  const idleDays = daysOf(idle, timezone);
  const clock = runsOf(habitOf(countDays(due), countDays(idleDays)));
  const core = [...due.keys()].flatMap((noonMs) => clock.map((one) => onDay(one, noonMs)));
  return { clock, taken: core.flatMap((one) => takenAround(one, idle)) };
}

/** Ground by day. The key is the noon of the day, 12 h before its end: clocks change before it. */
function daysOf(ground: readonly Interval[], timezone: string): Map<number, Interval[]> {
  const dayAt = calendarOf(timezone, 'day');
  const days = new Map<number, Interval[]>();
  for (const { start, end } of ground) {
    for (let from = start; from < end;) {
      const { toMs } = dayAt(from);
      const noonMs = toMs - NOON * MINUTE_MS;
      days.set(noonMs, [...(days.get(noonMs) ?? []), { start: from, end: Math.min(end, toMs) }]);
      from = toMs;
    }
  }
  return days;
}

/** By minute of the day: on how many days it is covered. */
function countDays(days: ReadonlyMap<number, readonly Interval[]>): Uint16Array {
  const counts = new Uint16Array(MINUTES_PER_DAY);
  for (const [noonMs, ground] of days) {
    for (const { start, end } of ground) {
      const last = Math.min(MINUTES_PER_DAY, minuteOf(end, noonMs));
      for (let at = Math.max(0, minuteOf(start, noonMs)); at < last; at++) counts[at]!++;
    }
  }
  return counts;
}

function minuteOf(timeMs: number, noonMs: number): number {
  return NOON + Math.round((timeMs - noonMs) / MINUTE_MS);
}

/** The minutes of the day at which it stood too often for chance, given how often it stands at all. */
function habitOf(due: Uint16Array, idle: Uint16Array): boolean[] {
  const sum = (counts: Uint16Array) => counts.reduce((total, count) => total + count, 0);
  const share = sum(idle) / sum(due);
  return Array.from(due, (days, at) => {
    if (days < FEWEST_DAYS || idle[at]! < SHARE_OF_DAYS * days) return false;
    return binomialTest(Math.min(idle[at]!, days), days, share).atLeast * MINUTES_PER_DAY < CHANCE;
  });
}

function runsOf(isHabit: readonly boolean[]): UsualBreak[] {
  const minutes = isHabit.flatMap((is, at) => (is ? [{ start: at, end: at + 1 }] : []));
  return mergeIntervals(minutes)
    .filter(({ start, end }) => end - start >= SHORTEST_MINUTES)
    .map(({ start, end }) => ({ fromMinute: start, toMinute: end }));
}

function onDay({ fromMinute, toMinute }: UsualBreak, noonMs: number): Interval {
  return { start: noonMs + (fromMinute - NOON) * MINUTE_MS, end: noonMs + (toMinute - NOON) * MINUTE_MS };
}

/** What was stood of a break on a day, with the ragged ends of its stop where most of the break was taken. */
function takenAround(core: Interval, idle: readonly Interval[]): Interval[] {
  const within = intersectIntervals([core], idle);
  if (lengthOf(within) * 2 < core.end - core.start) return within;
  return intersectIntervals([{ start: core.start - RAGGED_MS, end: core.end + RAGGED_MS }], idle);
}
