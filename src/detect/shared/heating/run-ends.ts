import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { highest } from '../../../maths/extremes.js';
import { median } from '../../../maths/quantile.js';
import { matesOf } from '../basics/mates.js';
import { placesPerSampleOf, samplingMsOf } from '../basics/sampling.js';
import { timeConstantsOf } from '../cold/cool-downs.js';
import { heatUpsOf } from './heat-ups.js';

/** From a place up to another, which is not in it any more. */
export type Places = readonly [from: number, to: number];

/** What the reading did where a run without heat began and ended. */
export interface RunEnds {
  /** Fall at the start against what the zone loses by itself: (T − room)/τ; about 1 for a dead heater. NaN = began cold. */
  readonly fallRatio: number;
  /** Largest rise between two neighbouring readings at the end. */
  readonly endJumpDegC: number;
  /** The same against what the zone's own heat-ups do in that time; about 1 for heat. NaN = no heat-up in the log. */
  readonly endJumpRatio: number;
  /** Highest reading after the run. NaN = the log ends first. */
  readonly backAtDegC: number;
  /** Last reading of the run, and how far it lies below where the zone should be. */
  readonly lastDegC: number;
  readonly belowDegC: number;
}

interface Levels {
  readonly roomDegC: number;
  readonly shouldDegC: number;
  /** At the end of the run. */
  readonly lastDegC: number;
  readonly usualSlopeDegCPerMinute: number;
}

/** Readings looked at on either side of an end. */
const READINGS_AROUND = 4;
/** A body that falls must lie this far above the room: below, its loss is too small to measure (own choice). */
const LEAST_ABOVE_ROOM_DEG_C = 30;
const FASTEST_FALL_RATIO = 2;
/** A dead heater's zone falls by about 1 at the start of the run; one that was low before hardly falls (own choice). */
const LEAST_FALL_RATIO = 0.5;
const FASTEST_RISE_RATIO = 3;
const LEAST_JUMP_DEG_C = 40;
/** Where no heat-up is in the log, a zone in metal is taken to heat slower than this (common practice). */
const FASTEST_UNKNOWN_DEG_C_PER_MINUTE = 40;
/** Overshoot of a loop damped by 0.4 after a step, a quarter: exp(−πζ/√(1−ζ²)), textbook. Few are tuned more freely. */
const MOST_OVERSHOOT_RATIO = 0.25;

export function endsOf(evidence: Evidence, zone: Zone, [from, to]: Places, levels: Levels): RunEnds {
  const { shouldDegC, lastDegC, usualSlopeDegCPerMinute } = levels;
  const back = backAt(evidence, zone, to);
  return {
    fallRatio: fallRatio(evidence, zone, from, levels.roomDegC),
    endJumpDegC: back.riseDegC,
    endJumpRatio: back.riseDegC / (usualSlopeDegCPerMinute * back.minutes),
    backAtDegC: back.degC,
    lastDegC,
    belowDegC: shouldDegC - lastDegC,
  };
}

/**
 * Whether the reading went or came back otherwise than heat moves: then it is the signal that failed, not the heat. It
 * fell at twice the zone's own loss. Or, where the run began cold, it came back at once: three times as fast as the zone
 * heats up, or to where only a body can be that was heated all the while.
 */
export function isSignalLost(ends: RunEnds): boolean {
  const { fallRatio, endJumpDegC, endJumpRatio } = ends;
  if (fallRatio > FASTEST_FALL_RATIO) return true;
  if (fallRatio <= FASTEST_FALL_RATIO) return false;
  return (
    endJumpDegC >= LEAST_JUMP_DEG_C &&
    (endJumpRatio > FASTEST_RISE_RATIO || overshootRatio(ends) > MOST_OVERSHOOT_RATIO)
  );
}

/** How far the reading came back above where the zone should be, against the way it was down. */
function overshootRatio({ backAtDegC, lastDegC, belowDegC }: RunEnds): number {
  return (backAtDegC - (lastDegC + belowDegC)) / belowDegC;
}

/** Whether the reading was down before the run. */
export function beganLow({ fallRatio }: RunEnds): boolean {
  return !(fallRatio >= LEAST_FALL_RATIO);
}

/**
 * How fast the zone usually heats up, °C/min: the way back from a run of its own is not asked, it may be no heat. A zone
 * without any other heat-up is taken to heat as the others of its machine.
 */
export function slopeOutside(evidence: Evidence, zone: Zone, runs: readonly Places[]): number {
  const { startMs, periodMs } = evidence.digest;
  const isFromRun = (ms: number) =>
    runs.some(([from, to]) => ms >= startMs + from * periodMs && ms <= startMs + to * periodMs);
  const own = heatUpsOf(evidence)[zone.index]!.filter((heatUp) => !isFromRun(heatUp.startMs));
  const others = matesOf(evidence.zones, zone).flatMap(({ index }) => heatUpsOf(evidence)[index]!);
  const known = own.length > 0 ? own : others;
  if (known.length === 0) return FASTEST_UNKNOWN_DEG_C_PER_MINUTE / FASTEST_RISE_RATIO;
  return median(known.map(({ slopeDegCPerMinute }) => slopeDegCPerMinute));
}

/** The largest rise between neighbouring readings at the end of a run, and the highest reading after it. */
function backAt(evidence: Evidence, zone: Zone, to: number): { riseDegC: number; minutes: number; degC: number } {
  const { digest } = evidence;
  const { minDegC, maxDegC } = digest.zones[zone.index]!;
  const found = { riseDegC: 0, minutes: NaN, degC: NaN };
  const places = filledAround(evidence, zone, to);
  places.forEach((place, k) => {
    const before = places[k - 1];
    if (before === undefined) return;
    const riseDegC = Math.max(maxDegC[place]! - minDegC[before]!, maxDegC[place]! - minDegC[place]!);
    if (riseDegC > found.riseDegC)
      Object.assign(found, { riseDegC, minutes: minutesBetween(evidence, zone, before, place) });
    if (place >= to && !(maxDegC[place]! <= found.degC)) found.degC = maxDegC[place]!;
  });
  return found;
}

/** Steepest fall between neighbouring readings around the start, against the zone's own loss there. */
function fallRatio(evidence: Evidence, zone: Zone, start: number, roomDegC: number): number {
  const { meanDegC, firstDegC, lastDegC } = evidence.digest.zones[zone.index]!;
  const tauMinutes = 60 * timeConstantsOf(evidence)[zone.index]!;
  if (Number.isNaN(tauMinutes)) return fallPastLimit(evidence, zone, start);
  const places = filledAround(evidence, zone, start);
  let steepest = NaN;
  places.forEach((place, k) => {
    const previous = places[k - 1];
    if (previous === undefined) return;
    const before = lastDegC[previous]!;
    const fall = Math.max(before - firstDegC[place]!, firstDegC[place]! - lastDegC[place]!, before - meanDegC[place]!);
    if (!(before - roomDegC > LEAST_ABOVE_ROOM_DEG_C)) return;
    // What is left after that time of natural decay, as a share of what it started from.
    const minutes = minutesBetween(evidence, zone, previous, place);
    const ratio = fall / ((before - roomDegC) * (1 - Math.exp(-minutes / tauMinutes)));
    if (!(ratio <= steepest)) steepest = ratio;
  });
  return steepest;
}

/** For a zone that never cools down by itself: its fall against the fastest cooling that its log allows, NaN = within it. */
function fallPastLimit(evidence: Evidence, zone: Zone, start: number): number {
  const { digest, episodes } = evidence;
  const around = READINGS_AROUND * Math.ceil(placesPerSampleOf(zone, digest.periodMs));
  const [earliestMs, latestMs] = [start - around, start + around].map((i) => digest.startMs + i * digest.periodMs);
  const falls = (episodes.get('impossible-step')?.[zone.index] ?? [])
    .filter(({ startMs, facts }) => startMs >= earliestMs! && startMs <= latestMs! && facts['jumpDegC']! < 0)
    .map(({ facts }) => -facts['rateDegCPerS']! / facts['limitDegCPerS']!);
  return falls.length > 0 ? FASTEST_FALL_RATIO * highest(falls) : NaN;
}

/** Places with readings around one, in time order: logs slower than a minute leave places empty. */
function filledAround(evidence: Evidence, zone: Zone, middle: number): number[] {
  const { digest } = evidence;
  const { meanDegC } = digest.zones[zone.index]!;
  const around = READINGS_AROUND * Math.ceil(placesPerSampleOf(zone, digest.periodMs));
  const places: number[] = [];
  for (let i = Math.max(0, middle - around); i <= Math.min(digest.length - 1, middle + around); i++)
    if (!Number.isNaN(meanDegC[i]!)) places.push(i);
  return places;
}

/** Never less than from sample to sample, which may lie in neighbouring places of a slow log. */
function minutesBetween({ digest }: Evidence, zone: Zone, before: number, place: number): number {
  return Math.max((place - before) * digest.periodMs, samplingMsOf(zone)) / MINUTE_MS;
}
