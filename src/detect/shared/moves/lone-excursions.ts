import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS, MINUTE_MS } from '../../../model/time-units.js';
import { finiteValues } from '../../../maths/finite.js';
import { medianAround, runningMedian } from '../../../maths/running-median.js';
import { MAD_TO_SD, robustSd } from '../../../maths/spread.js';
import { runningEdgesOf } from './common-moves.js';
import { conditionsOf } from '../readings/exposure.js';
import { maskOf } from '../readings/mask.js';
import { oncePer } from '../basics/memo.js';
import { hasBetween, hasNear, opensOf } from '../opens/opens.js';
import { placesPerSampleOf, resolutionDegCOf, samplingMsOf } from '../basics/sampling.js';
import { matesOf } from '../basics/mates.js';

/** A short excursion of one settled zone: out and pulled back within minutes. */
export interface Excursion {
  readonly timeMs: number;
  /** From the level around it; up is positive. */
  readonly sizeDegC: number;
  readonly beforeDegC: number;
  /** Change of output from just before to right after it; NaN = not logged. */
  readonly answerPercent: number;
}

/** What a zone did alone, and how long it was looked at. */
export interface LoneExcursions {
  readonly excursions: readonly Excursion[];
  /** Every place of the digest in which one could have been seen, ascending. */
  readonly watchedPlaces: Uint32Array;
  /** What each of them stands for: a slow log leaves the places between its readings empty. */
  readonly placeHours: number;
  readonly scatterDegC: number;
}

/** Level of a settled zone: the median of this long a stretch (own choice: longer than any excursion). */
const LEVEL_MS = 20 * MINUTE_MS;
/** Local scatter, so that an hour of more noise makes no excursions (own choice). */
const LOCAL_MS = 120 * MINUTE_MS;
/** An excursion is this many SDs of the zone's own scatter (own choice: one in a hundred million by chance) … */
const TIMES_SCATTER = 6;
/** … this large: below it draughts and digits are at work … */
const SMALLEST_DEG_C = 1.2;
/** … and more than this many steps of a coarse log (own choice). */
const SMALLEST_STEPS = 4;
/** It is out for no longer than two minutes to either side; what is left then is below this share (own choice). */
const OUT_MS = 3 * MINUTE_MS;
const LEFT_SHARE = 0.4;
/** A peer moves along when it moves this many SDs, or this share of it, the same way (as for steps). */
const PEER_TIMES_SCATTER = 4;
const PEER_SHARE = 0.15;
const SHARED_SHARE = 0.25;
/** Heat-up, cool-down or another set point within this time before: the loop is not at rest (common practice). */
const REST_MS = 30 * MINUTE_MS;
const REST_WITHIN_DEG_C = 15;
const SAME_SETPOINT_DEG_C = 0.3;
/** An open upsets the loop for this long (own choice). */
const OPEN_MS = 15 * MINUTE_MS;

interface Moves {
  readonly digest: ZoneDigest;
  readonly levelDegC: Float64Array;
  readonly moveDegC: Float64Array;
  readonly scatterDegC: number;
}

/**
 * Excursions of hot, settled zones that no peer shares, by zone index. The loop of a small bar pulls a false step back
 * within a sample or two, so a contact that comes and goes shows as a pulse up and, later, one down.
 */
export const loneExcursionsOf = oncePer((evidence: Evidence): readonly LoneExcursions[] => {
  const moves = evidence.zones.map((zone) => movesOf(evidence, zone));
  return evidence.zones.map((zone) => {
    const peers = matesOf(evidence.zones, zone);
    return findIn(
      evidence,
      zone,
      moves[zone.index]!,
      peers.map((peer) => moves[peer.index]!),
    );
  });
});

/** Furthest from the level in every place, signed. */
function movesOf(evidence: Evidence, zone: Zone): Moves {
  const { periodMs } = evidence.digest;
  const digest = evidence.digest.zones[zone.index]!;
  const mask = maskOf(evidence)[zone.index]!;
  const { hotFromDegC } = conditionsOf(evidence)[zone.index]!;
  const hot = new Float64Array(digest.meanDegC); // not "from" with a function, which is ten times slower
  for (let i = 0; i < hot.length; i++) if (mask[i] || !(hot[i]! >= hotFromDegC - REST_WITHIN_DEG_C)) hot[i] = NaN;
  const levelDegC = runningMedian(hot, oddPlaces(LEVEL_MS, periodMs));
  const moveDegC = hot.map((degC, i) => {
    if (Number.isNaN(degC)) return NaN;
    const up = digest.maxDegC[i]! - levelDegC[i]!;
    const down = digest.minDegC[i]! - levelDegC[i]!;
    return up > -down ? up : down;
  });
  const scatterDegC = Math.max(robustSd(moveDegC) || 0, resolutionDegCOf(zone) / 2);
  return { digest, levelDegC, moveDegC, scatterDegC };
}

function oddPlaces(spanMs: number, periodMs: number): number {
  return 2 * Math.max(1, Math.round(spanMs / periodMs / 2)) + 1;
}

function findIn(evidence: Evidence, zone: Zone, own: Moves, peers: readonly Moves[]): LoneExcursions {
  const { startMs, periodMs } = evidence.digest;
  const at = (place: number) => startMs + place * periodMs;
  const atRest = restPlaces(own, periodMs);
  const sizeDegC = own.moveDegC.map(Math.abs);
  const localPlaces = oddPlaces(LOCAL_MS, periodMs);
  const leastDegC = Math.max(SMALLEST_DEG_C, SMALLEST_STEPS * resolutionDegCOf(zone), TIMES_SCATTER * own.scatterDegC);
  const openMs = opensOf(evidence)
    [zone.index]!.flatMap((open) => [open.startMs, open.endMs])
    .sort((a, b) => a - b);
  const edgesMs = runningEdgesOf(evidence)[zone.index]!;
  const edgeMs = 2 * samplingMsOf(zone) + periodMs;
  const out = Math.max(2, Math.ceil(Math.max(OUT_MS, samplingMsOf(zone)) / periodMs));
  const apart = Math.ceil(placesPerSampleOf(zone, periodMs));
  const excursions: Excursion[] = [];
  const watched = new Uint32Array(own.moveDegC.length);
  let watchedCount = 0;
  for (let i = out; i < own.moveDegC.length - out; i++) {
    if (!atRest[i] || Number.isNaN(own.moveDegC[i]!)) continue;
    watched[watchedCount++] = i;
    if (!(sizeDegC[i]! >= leastDegC)) continue; // the few that are left are held against their surroundings
    if (!(sizeDegC[i]! >= TIMES_SCATTER * (MAD_TO_SD * medianAround(sizeDegC, i, localPlaces)))) continue;
    if (!isPulse(own.moveDegC, i, out) || isSharedMove(peers, i, own.moveDegC[i]!)) continue;
    // A stop behind the excursion is none of its causes: the alarm that it raised may have stopped the machine.
    if (hasNear(openMs, at(i), OPEN_MS) || hasBetween(edgesMs, at(i) - edgeMs, at(i))) continue;
    excursions.push(excursionAt(own, i, at(i), out, apart));
  }
  const placeHours = (placesPerSampleOf(zone, periodMs) * periodMs) / HOUR_MS;
  return { excursions, watchedPlaces: watched.slice(0, watchedCount), placeHours, scatterDegC: own.scatterDegC };
}

/** 1 where the zone was near its level, and its set point the same, for a while. */
function restPlaces({ digest, levelDegC }: Moves, periodMs: number): Uint8Array {
  const { meanDegC, setpointDegC } = digest;
  const rest = Math.ceil(REST_MS / periodMs);
  const atRest = new Uint8Array(meanDegC.length);
  let since = 0;
  let heldDegC = NaN;
  for (let i = 0; i < meanDegC.length; i++) {
    const isAway =
      meanDegC[i]! < levelDegC[i]! - REST_WITHIN_DEG_C || (meanDegC[i]! > 0 && Number.isNaN(levelDegC[i]!));
    if (Math.abs(setpointDegC[i]! - heldDegC) > SAME_SETPOINT_DEG_C || isAway) since = i;
    if (!Number.isNaN(setpointDegC[i]!)) heldDegC = setpointDegC[i]!;
    if (i - since >= rest) atRest[i] = 1;
  }
  return atRest;
}

/** The furthest place of its surroundings, and nearly nothing left of it a few minutes before and after. */
function isPulse(moveDegC: Float64Array, place: number, out: number): boolean {
  const sign = Math.sign(moveDegC[place]!);
  const size = Math.abs(moveDegC[place]!);
  let before = Infinity;
  let after = Infinity;
  for (let k = 1; k <= out; k++) {
    const earlier = moveDegC[place - k]!;
    const later = moveDegC[place + k]!;
    if (Math.abs(earlier) >= size || Math.abs(later) > size) return false;
    if (sign * earlier < before) before = sign * earlier;
    if (sign * later < after) after = sign * later;
  }
  return before <= LEFT_SHARE * size && after <= LEFT_SHARE * size;
}

function isSharedMove(peers: readonly Moves[], place: number, sizeDegC: number): boolean {
  const sign = Math.sign(sizeDegC);
  const moving = peers.filter(({ moveDegC, scatterDegC }) => {
    const least = Math.max(PEER_TIMES_SCATTER * scatterDegC, PEER_SHARE * Math.abs(sizeDegC));
    return [-1, 0, 1].some((k) => sign * moveDegC[place + k]! >= least);
  });
  return moving.length >= Math.max(1, SHARED_SHARE * peers.length);
}

function excursionAt(own: Moves, place: number, timeMs: number, out: number, apart: number): Excursion {
  const { digest, moveDegC, levelDegC } = own;
  const { outputPercent } = digest;
  // Slow logs leave places empty.
  const before = finiteValues(outputPercent.subarray(Math.max(0, place - 2 * out), place - out + 1)).at(-1) ?? NaN;
  let answerPercent = NaN;
  for (let i = place; i <= place + apart; i++) {
    const change = outputPercent[i]! - before;
    if (!(Math.abs(change) <= Math.abs(answerPercent))) answerPercent = Number.isNaN(change) ? answerPercent : change;
  }
  return { timeMs, sizeDegC: moveDegC[place]!, beforeDegC: levelDegC[place]!, answerPercent };
}
