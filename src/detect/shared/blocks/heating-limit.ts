import type { BlockFacts } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import { samplingMsOf } from '../basics/sampling.js';
import type { Strip } from './strip.js';

/** Moves are measured over at least this time, so that an input filter does not spread one jump over two moves. */
const MOVE_MS = 10_000;

/** So many of the fastest moves are passed over, so that a few upsets do not widen the limit (own choice). */
const MOVES_PASSED_OVER = 2;

/** Heat may move a zone this much faster than the fastest sustained move: slow logging halves a short heat-up. */
const SAFETY_FACTOR = 2.5;

/** A zone that was never seen to move is still allowed this (own choice: well below any full-power heat-up). */
const SMALLEST_LIMIT_DEG_C_PER_S = 0.02;

/**
 * How fast a zone can heat and cool, learned from its own log: the slower of two moves in a row in the same direction,
 * so that one false jump never counts, and no two that are undone at once, as by a spike of two or three samples that
 * climbs; of all of them the third fastest. The limit only rises as more of the log is
 * seen, so what passes the limit at the end passed it at any time before.
 *
 * Physical ground: a lumped body cannot change faster than full power over heat capacity, dT/dt = P/(m·c).
 */
export interface HeatingLimit {
  /** Samples from one end of a move to the other. */
  readonly stride: number;
  /** Longest time for two moves; more has a hole in it. */
  readonly longestMs: number;
  /** Fastest sustained rates so far, fastest first, °C/s. */
  readonly heating: number[];
  readonly cooling: number[];
}

/** Rates up and down, both 0 or more. */
export interface HeatingRates {
  readonly heatingDegCPerS: number;
  readonly coolingDegCPerS: number;
}

/** What need not be looked at. */
export interface Passed extends HeatingRates {
  /** No two moves take less; 0 = not known. */
  readonly shortestMs: number;
}

const nothingPassed: Passed = { heatingDegCPerS: 0, coolingDegCPerS: 0, shortestMs: 0 };

/** The limit of a zone of which nothing was seen yet. */
export function startHeatingLimit(zone: Zone): HeatingLimit {
  const stride = strideOf(zone);
  return { stride, longestMs: 1.75 * 2 * stride * samplingMsOf(zone), heating: [], cooling: [] };
}

/** Samples before the newest one that `learnMoves` looks at: two moves, and the two behind them. */
export function limitMemoryOf(zone: Zone): number {
  return 4 * strideOf(zone);
}

function strideOf(zone: Zone): number {
  return Math.min(LARGEST_STRIDE, Math.max(1, Math.ceil(MOVE_MS / samplingMsOf(zone))));
}

/** Logs faster than four samples a second are looked at as if they were that slow. */
const LARGEST_STRIDE = 40;

/** A little below 1, so that rounding never passes over a move that counts. */
const ALMOST = 1 - 1e-9;
/** More than rounding adds up to in sums and differences of readings (a double at 1000 °C is good to 1e-13). */
const ROUNDING_DEG_C = 1e-9;

/**
 * So much of two moves undone by one of the next two moves is no heat: a body that took two moves up does not give it
 * back in one. A loop that hunts gives back a half, even where a full swing is only four samples (own choice).
 */
const SHARE_UNDONE = 0.8;

/**
 * Takes the pairs of moves that end two moves before places `from` … `to` − 1 of a strip.
 *
 * @param passed Moves up to these rates are passed over; none where it is absent.
 */
export function learnMoves(
  { stride, longestMs, heating, cooling }: HeatingLimit,
  strip: Strip,
  passed: Passed = nothingPassed,
): void {
  const { timeMs, degC, from, to } = strip;
  const secondsAtLeast = (ALMOST * passed.shortestMs) / 1000;
  let leastUp = Math.max(passed.heatingDegCPerS, slowestKept(heating));
  let leastDown = Math.max(passed.coolingDegCPerS, slowestKept(cooling));
  let upDegC = secondsAtLeast * leastUp - ROUNDING_DEG_C;
  let downDegC = ROUNDING_DEG_C - secondsAtLeast * leastDown;
  for (let i = Math.max(4 * stride, from) - 2 * stride; i < to - 2 * stride; i++) {
    const bothDegC = degC[i]! - degC[i - 2 * stride]!;
    // Two moves that each count go at least twice as far together. Nearly all go less far, noise above all.
    if (bothDegC <= upDegC && bothDegC >= downDegC) continue;
    const second = degC[i]! - degC[i - stride]!;
    const spanMs = timeMs[i]! - timeMs[i - 2 * stride]!;
    const first = degC[i - stride]! - degC[i - 2 * stride]!;
    if (!(second * first > 0)) continue; // NaN, a bad sample, ends here too
    const rate = (2000 * (second > 0 ? Math.min(first, second) : Math.max(first, second))) / spanMs;
    if ((rate <= leastUp && rate >= -leastDown) || spanMs > longestMs) continue;
    if (isUndone(degC, i, stride, first + second)) continue;
    keepFastest(rate > 0 ? heating : cooling, Math.abs(rate));
    leastUp = Math.max(leastUp, slowestKept(heating));
    leastDown = Math.max(leastDown, slowestKept(cooling));
    upDegC = secondsAtLeast * leastUp - ROUNDING_DEG_C;
    downDegC = ROUNDING_DEG_C - secondsAtLeast * leastDown;
  }
}

/** Whether one of the next two moves goes back as far as two moves came; false where a bad sample follows. */
function isUndone(degC: Float64Array, i: number, stride: number, bothDegC: number): boolean {
  const next = degC[i + stride]! - degC[i]!;
  const afterNext = degC[i + 2 * stride]! - degC[i + stride]!;
  const limit = -SHARE_UNDONE * bothDegC;
  return bothDegC > 0 ? next <= limit || afterNext <= limit : next >= limit || afterNext >= limit;
}

/** Takes moves that were learned elsewhere, fastest first: those of a block, or of a later piece of the log. */
export function takeMoves(limit: HeatingLimit, moves: BlockFacts['fastestMoves']): void {
  for (const rate of moves.heating) if (rate > slowestKept(limit.heating)) keepFastest(limit.heating, rate);
  for (const rate of moves.cooling) if (rate > slowestKept(limit.cooling)) keepFastest(limit.cooling, rate);
}

function slowestKept(fastest: readonly number[]): number {
  return fastest[MOVES_PASSED_OVER] ?? 0;
}

function keepFastest(fastest: number[], rate: number): void {
  let place = 0;
  while (place < fastest.length && fastest[place]! >= rate) place++;
  fastest.splice(place, 0, rate);
  if (fastest.length > MOVES_PASSED_OVER + 1) fastest.pop();
}

/** What one pass over both pieces would have learned, once `earlier` has learned the moves across the seam. */
export function mergeHeatingLimits(earlier: HeatingLimit, later: HeatingLimit): HeatingLimit {
  const merged = copyHeatingLimit(earlier);
  takeMoves(merged, later);
  return merged;
}

export function copyHeatingLimit(limit: HeatingLimit): HeatingLimit {
  return { ...limit, heating: [...limit.heating], cooling: [...limit.cooling] };
}

/** The limits by what has been learned so far, °C/s. */
export function limitsOf(limit: HeatingLimit): HeatingRates {
  const { heatingDegCPerS, coolingDegCPerS } = learnedRates(limit);
  const heating = SAFETY_FACTOR * heatingDegCPerS;
  return {
    heatingDegCPerS: Math.max(SMALLEST_LIMIT_DEG_C_PER_S, heating),
    // Cold product or air takes heat about half as fast as full power brings it (common practice, on the safe side).
    coolingDegCPerS: Math.max(SMALLEST_LIMIT_DEG_C_PER_S, SAFETY_FACTOR * coolingDegCPerS, heating / 2),
  };
}

/** The third fastest sustained rates themselves, without the safety factor, °C/s; 0 where the zone never moved. */
export function learnedRates(limit: HeatingLimit): HeatingRates {
  return { heatingDegCPerS: slowestKept(limit.heating), coolingDegCPerS: slowestKept(limit.cooling) };
}
