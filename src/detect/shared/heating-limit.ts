import type { Zone } from '../../model/zone.js';
import { holeMsOf, samplingMsOf } from './sampling.js';
import type { Strip } from './strip.js';

/** Pairs of neighbours in one measuring stretch; more would blur a short heat-up, fewer would not outvote a jump. */
const PAIRS_PER_STRETCH = 6;

/** So many of the fastest stretches are passed over, so that a few upsets do not widen the limit (own choice). */
const STRETCHES_PASSED_OVER = 2;

/** Heat may move a zone this much faster than the fastest clean stretch seen (own choice: stretches blur the peak). */
const SAFETY_FACTOR = 2.5;

/** A zone that was never seen to move is still allowed this (own choice: well below any full-power heat-up). */
const SMALLEST_LIMIT_DEG_C_PER_S = 0.02;

/** One stretch of clock time, aligned to the clock so that two halves of a log cut it alike. */
interface Stretch {
  index: number;
  /** Beside bad samples or a hole: filtered inputs ramp there, which is not heat. */
  isDirty: boolean;
  firstMs: number;
  firstDegC: number;
  lastMs: number;
  lastDegC: number;
  pairs: number;
  largestDegC: number;
  largestMs: number;
}

/**
 * How fast a zone can heat and cool, learned from its own log: in every stretch of six sampling times the rate without
 * the largest single change, so that one false jump does not count; of all stretches the third fastest. The limit
 * only rises as more of the log is seen, so what passes the limit at the end passed it at any time before.
 *
 * Physical ground: a lumped body cannot change faster than full power over heat capacity, dT/dt = P/(m·c).
 */
export interface HeatingLimit {
  readonly stretchMs: number;
  readonly holeMs: number;
  /** The first stretch is kept apart: an earlier piece of the log may hold its beginning. */
  head: Stretch | null;
  open: Stretch | null;
  isAfterBreak: boolean;
  /** Fastest rates so far, fastest first, °C/s. */
  readonly heating: number[];
  readonly cooling: number[];
}

export interface Limits {
  readonly heatingDegCPerS: number;
  readonly coolingDegCPerS: number;
}

export function startHeatingLimit(zone: Zone): HeatingLimit {
  return {
    stretchMs: PAIRS_PER_STRETCH * samplingMsOf(zone),
    holeMs: holeMsOf(zone),
    head: null,
    open: null,
    isAfterBreak: false,
    heating: [],
    cooling: [],
  };
}

/** Takes the pairs of neighbours that end at places `from` … `to` − 1 of a strip. */
export function learnPairs(limit: HeatingLimit, { timeMs, degC, from, to }: Strip): void {
  const { stretchMs, holeMs } = limit;
  for (let i = Math.max(1, from); i < to;) {
    const open = limit.open;
    const gapMs = timeMs[i]! - timeMs[i - 1]!;
    const jump = degC[i]! - degC[i - 1]!;
    // A pair with a bad sample gives NaN, which fails the comparison as a hole does.
    if (!(jump === jump && gapMs <= holeMs)) {
      breakStretch(limit);
      i++;
    } else if (open === null || timeMs[i]! >= (open.index + 1) * stretchMs) {
      if (open !== null) closeStretch(limit, open);
      limit.open = newStretch(limit, timeMs[i - 1]!, degC[i - 1]!, timeMs[i]!, degC[i]!);
      i++;
    } else {
      i = extendStretch(open, (open.index + 1) * stretchMs, holeMs, timeMs, degC, i, to);
    }
  }
}

function newStretch(limit: HeatingLimit, fromMs: number, fromDegC: number, toMs: number, toDegC: number): Stretch {
  const isDirty = limit.isAfterBreak;
  limit.isAfterBreak = false;
  return {
    index: Math.floor(toMs / limit.stretchMs),
    isDirty,
    firstMs: fromMs,
    firstDegC: fromDegC,
    lastMs: toMs,
    lastDegC: toDegC,
    pairs: 1,
    largestDegC: toDegC - fromDegC,
    largestMs: toMs - fromMs,
  };
}

/** Takes pairs into the stretch up to its end, the strip's end or a break; returns the place of the next pair. */
function extendStretch(
  stretch: Stretch,
  endMs: number,
  holeMs: number,
  timeMs: Float64Array,
  degC: Float64Array,
  from: number,
  to: number,
): number {
  let largest = stretch.largestDegC;
  let largestMs = stretch.largestMs;
  let i = from;
  for (; i < to && timeMs[i]! < endMs; i++) {
    const jump = degC[i]! - degC[i - 1]!;
    const gapMs = timeMs[i]! - timeMs[i - 1]!;
    if (!(jump === jump && gapMs <= holeMs)) break;
    if (Math.abs(jump) > Math.abs(largest)) {
      largest = jump;
      largestMs = gapMs;
    }
  }
  stretch.pairs += i - from;
  stretch.lastMs = timeMs[i - 1]!;
  stretch.lastDegC = degC[i - 1]!;
  stretch.largestDegC = largest;
  stretch.largestMs = largestMs;
  return i;
}

function breakStretch(limit: HeatingLimit): void {
  if (limit.open) {
    limit.open.isDirty = true;
    closeStretch(limit, limit.open);
    limit.open = null;
  }
  limit.isAfterBreak = true;
}

function closeStretch(limit: HeatingLimit, stretch: Stretch): void {
  if (limit.head === null) limit.head = stretch;
  else countStretch(limit, stretch);
}

function countStretch(limit: HeatingLimit, stretch: Stretch): void {
  if (stretch.isDirty || stretch.pairs < PAIRS_PER_STRETCH / 2) return;
  const cleanDegC = stretch.lastDegC - stretch.firstDegC - stretch.largestDegC;
  const cleanMs = stretch.lastMs - stretch.firstMs - stretch.largestMs;
  const rate = (cleanDegC * 1000) / cleanMs;
  if (Number.isFinite(rate)) keepFastest(rate > 0 ? limit.heating : limit.cooling, Math.abs(rate));
}

function keepFastest(fastest: number[], rate: number): void {
  if (fastest.length > STRETCHES_PASSED_OVER && rate <= fastest[STRETCHES_PASSED_OVER]!) return;
  let place = 0;
  while (place < fastest.length && fastest[place]! >= rate) place++;
  fastest.splice(place, 0, rate);
  if (fastest.length > STRETCHES_PASSED_OVER + 1) fastest.pop();
}

/** What one pass over both pieces would have learned, once `earlier` has learned the pair across the seam. */
export function mergeHeatingLimits(earlier: HeatingLimit, later: HeatingLimit): HeatingLimit {
  const merged: HeatingLimit = { ...earlier, heating: [...earlier.heating], cooling: [...earlier.cooling] };
  for (const stretch of [later.head, later.open]) if (stretch) continueStretch(merged, stretch);
  if (later.head !== null && later.open === null && merged.open !== null) {
    closeStretch(merged, merged.open); // the later piece ended in a break, its only stretch closed
    merged.open = null;
  }
  for (const rate of later.heating) keepFastest(merged.heating, rate);
  for (const rate of later.cooling) keepFastest(merged.cooling, rate);
  const isNothingLater = later.head === null && later.open === null;
  merged.isAfterBreak = later.isAfterBreak || (isNothingLater && merged.isAfterBreak);
  return merged;
}

function continueStretch(limit: HeatingLimit, stretch: Stretch): void {
  const open = limit.open;
  if (open === null || open.index !== stretch.index || open.lastMs !== stretch.firstMs) {
    if (open !== null) closeStretch(limit, open);
    limit.open = { ...stretch, isDirty: stretch.isDirty || limit.isAfterBreak };
    limit.isAfterBreak = false;
    return;
  }
  const isLarger = Math.abs(stretch.largestDegC) > Math.abs(open.largestDegC);
  limit.open = {
    ...open,
    isDirty: open.isDirty || stretch.isDirty,
    lastMs: stretch.lastMs,
    lastDegC: stretch.lastDegC,
    pairs: open.pairs + stretch.pairs,
    largestDegC: isLarger ? stretch.largestDegC : open.largestDegC,
    largestMs: isLarger ? stretch.largestMs : open.largestMs,
  };
}

/** The limits by what has been learned so far, °C/s. */
export function limitsOf(limit: HeatingLimit): Limits {
  const heating = SAFETY_FACTOR * (limit.heating[STRETCHES_PASSED_OVER] ?? 0);
  const cooling = SAFETY_FACTOR * (limit.cooling[STRETCHES_PASSED_OVER] ?? 0);
  return {
    heatingDegCPerS: Math.max(SMALLEST_LIMIT_DEG_C_PER_S, heating),
    // Cold product or air takes heat about half as fast as full power brings it (common practice, on the safe side).
    coolingDegCPerS: Math.max(SMALLEST_LIMIT_DEG_C_PER_S, cooling, heating / 2),
  };
}

/** The third fastest clean rates themselves, without the safety factor, °C/s; 0 where the zone was never seen to move. */
export function learnedRates(limit: HeatingLimit): Limits {
  return {
    heatingDegCPerS: limit.heating[STRETCHES_PASSED_OVER] ?? 0,
    coolingDegCPerS: limit.cooling[STRETCHES_PASSED_OVER] ?? 0,
  };
}
