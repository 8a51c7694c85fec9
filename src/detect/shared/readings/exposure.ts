import type { Evidence } from '../../../model/detector.js';
import type { ZoneDigest } from '../../../model/digest.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { mergeIntervals } from '../../../maths/intervals.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { placesPerSampleOf } from '../basics/sampling.js';

/** In which conditions a zone was, place by place of the digest; NaN where that is not known. */
export interface Conditions {
  /** 0 to 1: share of the period in which the machine ran. */
  readonly runningShare: Float32Array;
  /** 1 near operating temperature, 0 clearly below. */
  readonly hot: Float32Array;
  /** Where the running state comes from. */
  readonly runningFrom: 'log' | 'stop alarms' | 'unknown';
  /** Readings from here up count as hot. */
  readonly hotFromDegC: number;
}

/**
 * Hours in which the zone gave readings, by condition. Hours of unknown condition, and places in which the machine both
 * ran and stood, are in none but `loggedHours` and those of heat.
 */
export interface Exposure {
  readonly loggedHours: number;
  readonly runningHours: number;
  readonly stoppedHours: number;
  readonly hotHours: number;
  readonly coldHours: number;
  readonly hotRunningHours: number;
  readonly hotStoppedHours: number;
}

/** A zone that moves less than this was never cold in the log (own choice). */
const SMALLEST_RANGE_DEG_C = 25;

/** Hot = in the upper part of the way from room to operating temperature (own choice). */
const HOT_PART = 0.85;

/** Stop alarms tell the running state only when there are some of them (own choice). */
const FEWEST_STOP_ALARMS = 3;

/**
 * A place in which the machine ran for a part tells neither side: opens come as it starts and stops, and alarms are late
 * by seconds (own choice of the parts).
 */
const RAN_FROM_SHARE = 0.9;
const STOOD_TO_SHARE = 0.1;

/** False where not known. */
export function ran(runningShare: number): boolean {
  return runningShare >= RAN_FROM_SHARE;
}

/** False where not known. */
export function stood(runningShare: number): boolean {
  return runningShare <= STOOD_TO_SHARE;
}

/** Conditions of every zone, by zone index. */
export const conditionsOf = oncePer((evidence: Evidence): readonly Conditions[] => {
  const hots = evidence.zones.map((zone) => hotPlaces(evidence.digest.zones[zone.index]!, evidence.digest.length));
  const byMachine = new Map<string, Float32Array>();
  for (const zone of evidence.zones) {
    if (!byMachine.has(zone.machine)) byMachine.set(zone.machine, loggedRunning(evidence, zone.machine));
  }
  return evidence.zones.map((zone, z): Conditions => {
    const { hot, hotFromDegC } = hots[z]!;
    const logged = byMachine.get(zone.machine)!;
    if (logged.some((share) => !Number.isNaN(share))) {
      return { runningShare: logged, runningFrom: 'log', hot, hotFromDegC };
    }
    const told = runningFromAlarms(evidence, zone, hot);
    if (told) return { runningShare: told, runningFrom: 'stop alarms', hot, hotFromDegC };
    return { runningShare: logged, runningFrom: 'unknown', hot, hotFromDegC };
  });
});

/** Hours by condition for every zone, by zone index. */
export const exposuresOf = oncePer((evidence: Evidence): readonly Exposure[] => {
  return evidence.zones.map((zone) => sumHours(evidence, zone, 0, evidence.digest.length));
});

/** Hours by condition of one zone between two times; whole places of the digest. */
export function exposureBetween(evidence: Evidence, zone: number, fromMs: number, toMs: number): Exposure {
  const { startMs, periodMs, length } = evidence.digest;
  const from = Math.max(0, Math.floor((fromMs - startMs) / periodMs));
  const to = Math.min(length, Math.ceil((toMs - startMs) / periodMs));
  return sumHours(evidence, evidence.zones[zone]!, from, to);
}

/** Condition at a time: that of its place, or of the nearest earlier one of the last few in which it is known. */
export function conditionAt(evidence: Evidence, column: Float32Array, timeMs: number): number {
  const place = Math.floor((timeMs - evidence.digest.startMs) / evidence.digest.periodMs);
  for (let i = place; i >= Math.max(0, place - 10); i--) {
    const value = column[i];
    if (value !== undefined && !Number.isNaN(value)) return value;
  }
  return NaN;
}

function hotPlaces(zone: ZoneDigest, length: number): { hot: Float32Array; hotFromDegC: number } {
  const high = quantile(zone.meanDegC, 0.9);
  const low = quantile(zone.meanDegC, 0.02);
  const hotFromDegC = high - low < SMALLEST_RANGE_DEG_C ? -Infinity : low + HOT_PART * (high - low);
  const hot = new Float32Array(length).fill(NaN);
  for (let i = 0; i < length; i++) {
    const degC = zone.meanDegC[i]!;
    if (degC === degC) hot[i] = degC >= hotFromDegC ? 1 : 0;
  }
  return { hot, hotFromDegC };
}

/** Mean over the machine's zones of what the log holds. */
function loggedRunning({ zones, digest }: Evidence, machine: string): Float32Array {
  const sums = new Float32Array(digest.length);
  const counts = new Uint16Array(digest.length);
  for (const zone of zones) {
    if (zone.machine !== machine) continue;
    const { runningShare } = digest.zones[zone.index]!;
    for (let i = 0; i < digest.length; i++) {
      if (Number.isNaN(runningShare[i]!)) continue;
      sums[i]! += runningShare[i]!;
      counts[i]!++;
    }
  }
  return sums.map((sum, i) => sum / counts[i]!); // 0/0 gives the NaN that says unknown
}

/** Running = hot and in no stop alarm; null when the log has too few stop alarms to tell. */
function runningFromAlarms({ alarms, digest }: Evidence, zone: Zone, hot: Float32Array): Float32Array | null {
  const ofMachine = alarms.about(
    (a) => a.kind === 'machine-stop' && (a.machine === null || a.machine === zone.machine),
  );
  const stops = [...ofMachine].filter(({ startMs, endMs }) => endMs > startMs);
  if (stops.length < FEWEST_STOP_ALARMS) return null;
  const standing = mergeIntervals(stops.map(({ startMs, endMs }) => ({ start: startMs, end: endMs })));
  const running = Float32Array.from(hot);
  for (const { start, end } of standing) {
    const first = Math.max(0, Math.floor((start - digest.startMs) / digest.periodMs));
    const last = Math.min(digest.length - 1, Math.floor((end - digest.startMs) / digest.periodMs));
    for (let i = first; i <= last; i++) {
      const from = Math.max(start, digest.startMs + i * digest.periodMs);
      const to = Math.min(end, digest.startMs + (i + 1) * digest.periodMs);
      running[i] = Math.max(0, running[i]! - (to - from) / digest.periodMs);
    }
  }
  return running;
}

/** A place with readings counts for as long as one sample stands for: slow logs leave the places between empty. */
function sumHours(evidence: Evidence, zone: Zone, from: number, to: number): Exposure {
  const { periodMs, zones } = evidence.digest;
  const { readingCount } = zones[zone.index]!;
  const { runningShare, hot } = conditionsOf(evidence)[zone.index]!;
  const hours = (placesPerSampleOf(zone, periodMs) * periodMs) / HOUR_MS;
  const sums = { logged: 0, running: 0, stopped: 0, hot: 0, cold: 0, hotRunning: 0, hotStopped: 0 };
  for (let i = from; i < to; i++) {
    if (readingCount[i] === 0) continue;
    sums.logged += hours;
    const isHot = hot[i] === 1;
    if (isHot) sums.hot += hours;
    else sums.cold += hours;
    const share = runningShare[i]!;
    if (ran(share)) {
      sums.running += hours;
      if (isHot) sums.hotRunning += hours;
    } else if (stood(share)) {
      sums.stopped += hours;
      if (isHot) sums.hotStopped += hours;
    }
  }
  return {
    loggedHours: sums.logged,
    runningHours: sums.running,
    stoppedHours: sums.stopped,
    hotHours: sums.hot,
    coldHours: sums.cold,
    hotRunningHours: sums.hotRunning,
    hotStoppedHours: sums.hotStopped,
  };
}
