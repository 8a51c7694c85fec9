import type { AlarmSubject, StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantDigest } from '../model/digest.js';
import type { PlantFile } from '../model/plant-file.js';
import { DAY_MS } from '../model/time-units.js';
import { intersectIntervals, mergeIntervals, subtractIntervals, type Interval } from '../maths/intervals.js';
import { median } from '../maths/quantile.js';
import { heatedMinutes, heatedSpans, type HeatedSpan, type Machine } from './machine-minutes.js';
import type { DowntimeSettings } from './settings.js';
import { shiftIntervals } from './shifts.js';
import { usualTimeOfDayMs } from './usual-clock.js';
import type { UsualBreak } from './usual-breaks.js';
import { lowest } from '../maths/extremes.js';

export interface ProductionTime {
  /** When the machine was meant to run. */
  readonly planned: readonly Interval[];
  /** How that was told, for the notes. */
  readonly from: 'shifts' | 'running' | 'heats' | 'window';
  /** Usual breaks that were taken out of it, where the log shows any. */
  readonly breaks?: readonly UsualBreak[];
}

export interface ProductionInput {
  readonly machine: Machine;
  readonly digest: PlantDigest;
  /** Ground on which the machine ran, or null when the log does not say. */
  readonly ran: readonly Interval[] | null;
  readonly alarms: AlarmList;
  readonly stops: readonly StopEntry[];
  readonly plant: PlantFile;
  readonly settings: DowntimeSettings;
}

/**
 * When a machine was meant to run: the shifts of plant.yaml, else the time its heats are on, less the usual start-up
 * after heats on and the usual run-out before heats off. A fault that delays one start is not mistaken for a late
 * shift, because the usual start-up is the median of all of them.
 */
export function productionTime(input: ProductionInput): ProductionTime {
  const { machine, digest, plant, settings, stops } = input;
  const window = { start: digest.startMs, end: digest.startMs + digest.length * digest.periodMs };
  const plannedStops = plannedStopsOf(stops, machine);
  const without = (ground: readonly Interval[]) =>
    subtractIntervals(intersectIntervals(ground, [window]), plannedStops);
  const shifts = shiftIntervals(plant, window);
  if (shifts) return { planned: without(shifts), from: 'shifts' };
  const minutes = heatedMinutes(machine, digest, settings.heatedShare);
  const heated = fillHoles(heatedSpans(minutes, digest, settings.shortestOffMs), digest);
  if (heated.length === 0) return { planned: without([window]), from: 'window' };
  const started = input.ran ? startsFromRunning(heated, input.ran) : startsFromAlarms(heated, input);
  const planned = heated.map((span, i) => ({ start: started.starts[i]!, end: span.end - started.runOutMs }));
  const all = input.ran ? mergeIntervals([...planned, ...input.ran]) : planned;
  return { planned: without(all), from: input.ran ? 'running' : 'heats' };
}

/** Stops of a machine that the stop list says were planned. */
export function plannedStopsOf(stops: readonly StopEntry[], { name }: Pick<Machine, 'name'>): Interval[] {
  return stops
    .filter((stop) => stop.isPlanned && (stop.machine === null || stop.machine === name))
    .map(({ startMs, endMs }) => ({ start: startMs, end: endMs }));
}

/**
 * Where a hole in the log hides when the heats went on or off, the usual time of day is taken, if it lies in the hole.
 */
function fillHoles(spans: readonly HeatedSpan[], digest: PlantDigest): HeatedSpan[] {
  const usualOn = usualTimeOfDayMs(spans.filter(({ isStartTold }) => isStartTold).map(({ start }) => start));
  const usualOff = usualTimeOfDayMs(spans.filter(({ isEndTold }) => isEndTold).map(({ end }) => end));
  const endMs = digest.startMs + digest.length * digest.periodMs;
  return spans.map((span, i) => {
    const before = spans[i - 1]?.end ?? digest.startMs;
    const after = spans[i + 1]?.start ?? endMs;
    const start = span.isStartTold || i === 0 ? span.start : lastAt(usualOn, span.start);
    const end = span.isEndTold || i === spans.length - 1 ? span.end : lastAt(usualOff, span.end + DAY_MS);
    return { ...span, start: start > before ? start : span.start, end: end > span.end && end < after ? end : span.end };
  });
}

/** The last moment at or before a time that has this time of day; the time itself when there is none. */
function lastAt(clockMs: number, timeMs: number): number {
  if (Number.isNaN(clockMs)) return timeMs;
  const sameDay = timeMs - (timeMs % DAY_MS) + clockMs;
  return sameDay <= timeMs ? sameDay : sameDay - DAY_MS;
}

interface Starts {
  /** By heated span: when production was due. */
  readonly starts: readonly number[];
  readonly runOutMs: number;
}

function startsFromRunning(heated: readonly HeatedSpan[], ran: readonly Interval[]): Starts {
  const first = heated.map((span) => intersectIntervals(ran, [span])[0]?.start ?? NaN);
  const last = heated.map((span) => intersectIntervals(ran, [span]).at(-1)?.end ?? NaN);
  const usualMs = median(heated.map((span, i) => (span.isStartTold ? first[i]! - span.start : NaN)));
  const leadMs = Number.isNaN(usualMs) ? 0 : usualMs;
  const runOutMs = median(heated.map((span, i) => span.end - last[i]!));
  return {
    starts: heated.map((span, i) => Math.min(span.start + leadMs, first[i]! || Infinity)),
    runOutMs: Number.isNaN(runOutMs) ? 0 : runOutMs,
  };
}

/**
 * Without a running column the first machine alarm after heats on tells when production had begun. Over several
 * starts, the earliest of them less its expected wait bounds the start (location of a shifted exponential:
 * x₍₁₎ − (x̄ − x₍₁₎)/(n − 1); Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, from memory).
 */
function startsFromAlarms(heated: readonly HeatedSpan[], { machine, alarms }: ProductionInput): Starts {
  const own = alarms.about((alarm) => alarm.kind === 'machine-stop' && isOf(alarm, machine));
  const waits = heated
    .filter(({ isStartTold }) => isStartTold)
    .flatMap((span) => {
      const firstMs = own.columns.startMs.find((startMs) => startMs >= span.start && startMs < span.end);
      return firstMs === undefined ? [] : [firstMs - span.start];
    });
  const shortest = lowest(waits);
  const mean = waits.reduce((sum, wait) => sum + wait, 0) / waits.length;
  const leadMs = waits.length < 3 ? 0 : Math.max(0, shortest - (mean - shortest) / (waits.length - 1));
  return { starts: heated.map(({ start }) => start + leadMs), runOutMs: 0 };
}

/** Alarms that name no machine count for every machine only when there is no other way to tell. */
export function isOf(alarm: AlarmSubject, machine: Machine): boolean {
  return alarm.machine === machine.name;
}
