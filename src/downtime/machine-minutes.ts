import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import type { Zone } from '../model/zone.js';
import { mergeIntervals, type Interval } from '../maths/intervals.js';
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
 * Running share of a machine by minute: the median of its zones, which all carry the same signal.
 *
 * @returns null when none of its zones knows whether it runs.
 */
export function runningOf({ zones }: Machine, digest: PlantDigest): Float32Array | null {
  const columns = zones.map(({ index }) => digest.zones[index]!.runningShare);
  const known = columns.find((column) => column.some((share) => !Number.isNaN(share)));
  return known ?? null;
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

function zoneHeated(zone: ZoneDigest, heatedShare: number): Float32Array {
  const above = (column: Float32Array, limit: number) =>
    column.map((value) => (Number.isNaN(value) ? NaN : value > limit ? 1 : 0));
  const usualSetpoint = quantile(zone.setpointDegC, 0.9);
  if (Number.isFinite(usualSetpoint)) return above(zone.setpointDegC, usualSetpoint * heatedShare);
  const cold = quantile(zone.meanDegC, 0.02);
  const hot = quantile(zone.meanDegC, 0.9);
  return above(zone.meanDegC, cold + (hot - cold) * heatedShare);
}

/** The runs of minutes that hold `value`, in ms; minutes that tell nothing go with the minute before them. */
export function runsOf(minutes: Float32Array, value: number, { startMs, periodMs }: PlantDigest): Interval[] {
  const runs: Interval[] = [];
  let state = NaN;
  for (let i = 0; i < minutes.length; i++) {
    if (!Number.isNaN(minutes[i]!)) state = minutes[i]!;
    if (state === value) runs.push({ start: startMs + i * periodMs, end: startMs + (i + 1) * periodMs });
  }
  return mergeIntervals(runs);
}

/**
 * Stops told from the running share, in ms. A minute that ran in part is put where its neighbours say: the stop at its
 * end when the machine ran before, else at its start.
 */
export function stopsOfRunning(running: Float32Array, { startMs, periodMs }: PlantDigest): Interval[] {
  const stops: Interval[] = [];
  let before = NaN; // running share of the last minute that tells
  for (let i = 0; i < running.length; i++) {
    const share = running[i]!;
    if (Number.isNaN(share)) continue;
    const from = startMs + i * periodMs;
    const stoppedMs = (1 - share) * periodMs;
    const comesToStop = !(before < 0.5) && !((running[i + 1] ?? 0) > 0.5);
    const start = comesToStop ? from + periodMs - stoppedMs : from;
    if (stoppedMs > 0) stops.push({ start, end: start + stoppedMs });
    before = share;
  }
  return mergeIntervals(stops);
}

/** Ground on which the running share is known. */
export function knownRunning(running: Float32Array, { startMs, periodMs }: PlantDigest): Interval[] {
  const known: Interval[] = [];
  for (let i = 0; i < running.length; i++) {
    if (Number.isNaN(running[i]!)) continue;
    known.push({ start: startMs + i * periodMs, end: startMs + (i + 1) * periodMs });
  }
  return mergeIntervals(known);
}
