import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import type { Zone } from '../model/zone.js';
import { held, heldPlaces } from './held-rows.js';
import { mergeByStart, mergeIntervals, subtractIntervals, type Interval } from '../maths/intervals.js';
import { quantile } from '../maths/quantile.js';

/** One machine with the zones on it. */
export interface Machine {
  readonly name: string;
  readonly zones: readonly Zone[];
}

/** Machines in the order in which the zones name them. Never throws. */
export function machinesOf(zones: readonly Zone[]): Machine[] {
  return [...new Set(zones.map(({ machine }) => machine))].map((name) => ({
    name,
    zones: zones.filter(({ machine }) => machine === name),
  }));
}

/**
 * Running share of a machine by minute, from the first of its zones that knows: they all carry the same signal. It holds
 * until the next row is due.
 *
 * @returns null when none of its zones knows whether it runs.
 */
export function runningOf({ zones }: Machine, digest: PlantDigest): Float32Array | null {
  const teller = zones.find(({ index }) => digest.zones[index]!.runningShare.some((share) => !Number.isNaN(share)));
  if (!teller) return null;
  const { runningShare } = digest.zones[teller.index]!;
  // Rows seldomer than minutes are held already.
  return teller.samplingMs > digest.periodMs
    ? runningShare
    : held(runningShare, heldPlaces(teller.samplingMs, digest.periodMs));
}

/**
 * Minutes in which a machine's heats are on: most of its zones have their set point up, or, where no set point is
 * logged, give output, or, where that is not logged either, read hot. The majority decides, so one dead sensor
 * changes nothing.
 *
 * @returns One place per minute: 1 on, 0 off, NaN nothing to tell from.
 */
export function heatedMinutes({ zones }: Machine, digest: PlantDigest, heatedShare: number): Float32Array {
  const votes = zones.map(({ index }) => zoneHeated(digest.zones[index]!, heatedShare));
  return Float32Array.from({ length: digest.length }, (_, i) => {
    let on = 0;
    let told = 0;
    for (const vote of votes) {
      if (Number.isNaN(vote[i]!)) continue;
      told++;
      on += vote[i]!;
    }
    return told === 0 ? NaN : on * 2 > told ? 1 : 0;
  });
}

/** A machine that never cools was never seen cold: then a warm room stands for it (common practice). */
const WARM_ROOM_DEG_C = 30;

function zoneHeated(zone: ZoneDigest, heatedShare: number): Float32Array {
  const above = (column: Float32Array, limit: number) =>
    column.map((value) => (Number.isNaN(value) ? NaN : value > limit ? 1 : 0));
  const cold = Math.min(quantile(zone.meanDegC, 0.02), WARM_ROOM_DEG_C);
  const hot = quantile(zone.meanDegC, 0.9);
  const isHot = above(zone.meanDegC, cold + (hot - cold) * heatedShare);
  const usualSetpoint = quantile(zone.setpointDegC, 0.9);
  if (!Number.isFinite(usualSetpoint)) return isHot;
  const isAsked = above(zone.setpointDegC, usualSetpoint * heatedShare);
  return isAsked.map((asked, i) => (asked === 1 && isSwitchedOff(zone, isHot, i) ? 0 : asked));
}

/** Many controllers keep their set point while the heats are off: then there is no output, and the zone is cold. */
function isSwitchedOff({ outputPercent }: ZoneDigest, isHot: Float32Array, place: number): boolean {
  return outputPercent[place] === 0 && isHot[place] === 0;
}

/** A run of minutes of one state; `told` says whether its two ends were seen or lie in a hole of the log. */
export interface HeatedSpan extends Interval {
  readonly isStartTold: boolean;
  readonly isEndTold: boolean;
}

/**
 * Spans with the heats on, in ms. Off for less than `shortestOffMs` does not end a span. A hole between on and on
 * counts as on, a hole between off and on (or on and off) as off; the end that lies in it is then not told.
 */
export function heatedSpans(
  minutes: Float32Array,
  { startMs, periodMs }: PlantDigest,
  shortestOffMs: number,
): HeatedSpan[] {
  const grid = { startMs, periodMs };
  const on = runsOfMinutes(minutes, grid, (heated) => heated === 1);
  const told = runsOfMinutes(minutes, grid, (heated) => !Number.isNaN(heated));
  const holes = subtractIntervals([{ start: startMs, end: startMs + minutes.length * periodMs }], told);
  const onFrom = new Set(on.map(({ start }) => start));
  const onUntil = new Set(on.map(({ end }) => end));
  const isHoleBetweenOn = ({ start, end }: Interval) => onUntil.has(start) && onFrom.has(end);
  const spans = mergeIntervals([...on, ...holes.filter(isHoleBetweenOn)], shortestOffMs);
  const holesFrom = new Set(holes.map(({ start }) => start));
  const holesUntil = new Set(holes.map(({ end }) => end));
  return spans.map((span) => ({
    ...span,
    isStartTold: span.start !== told[0]?.start && !holesUntil.has(span.start),
    isEndTold: !holesFrom.has(span.end),
  }));
}

/**
 * Minutes for which a statement holds, joined to runs, in ms. No minute becomes an object of its own: five years have
 * 2.6 million of them.
 */
function runsOfMinutes(
  values: Float32Array,
  { startMs, periodMs }: Pick<PlantDigest, 'startMs' | 'periodMs'>,
  holds: (value: number) => boolean,
): Interval[] {
  const runs: Interval[] = [];
  for (let from = 0; from < values.length;) {
    let to = from;
    while (to < values.length && holds(values[to]!)) to++;
    if (to > from) runs.push({ start: startMs + from * periodMs, end: startMs + to * periodMs });
    from = to + 1;
  }
  return runs;
}

/**
 * Stops told from the running share, in ms. A minute that ran in part is put where its neighbours say: the stop at its
 * end when the machine ran before, else at its start.
 */
export function stopsOfRunning(running: Float32Array, digest: PlantDigest): Interval[] {
  return mergeByStart(stopOfEachMinute(running, digest));
}

function* stopOfEachMinute(running: Float32Array, { startMs, periodMs }: PlantDigest): Iterable<Interval> {
  let before = NaN; // running share of the last minute that tells
  for (let i = 0; i < running.length; i++) {
    const share = running[i]!;
    if (Number.isNaN(share)) continue;
    const from = startMs + i * periodMs;
    const stoppedMs = (1 - share) * periodMs;
    const comesToStop = !(before < 0.5) && !((running[i + 1] ?? 0) > 0.5);
    const start = comesToStop ? from + periodMs - stoppedMs : from;
    if (stoppedMs > 0) yield { start, end: start + stoppedMs };
    before = share;
  }
}

/** Ground on which the running share is known. */
export function knownRunning(running: Float32Array, { startMs, periodMs }: PlantDigest): Interval[] {
  return runsOfMinutes(running, { startMs, periodMs }, (share) => !Number.isNaN(share));
}
