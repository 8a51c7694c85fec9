import type { AlarmSpan, StopEntry } from '../model/alarm.js';
import type { PlantDigest } from '../model/digest.js';
import type { PlantFile } from '../model/plant-file.js';
import { intersectIntervals, mergeIntervals, subtractIntervals, type Interval } from '../maths/intervals.js';
import { median } from '../maths/quantile.js';
import { heatedMinutes, runsOf, type Machine } from './machine-minutes.js';
import type { DowntimeSettings } from './settings.js';
import { shiftIntervals } from './shifts.js';

export interface ProductionTime {
  /** When the machine was meant to run. */
  readonly planned: readonly Interval[];
  /** How that was told, for the notes. */
  readonly from: 'shifts' | 'running' | 'heats' | 'window';
}

export interface ProductionInput {
  readonly machine: Machine;
  readonly digest: PlantDigest;
  /** Ground on which the machine ran, or null when the log does not say. */
  readonly ran: readonly Interval[] | null;
  readonly alarms: readonly AlarmSpan[];
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
  const plannedStops = stops
    .filter((stop) => stop.isPlanned && (stop.machine === null || stop.machine === machine.name))
    .map(({ startMs, endMs }) => ({ start: startMs, end: endMs }));
  const without = (ground: readonly Interval[]) =>
    subtractIntervals(intersectIntervals(ground, [window]), plannedStops);
  const shifts = shiftIntervals(plant, window);
  if (shifts) return { planned: without(shifts), from: 'shifts' };
  const heated = heatedSpans(input);
  if (heated.length === 0) return { planned: without([window]), from: 'window' };
  const started = input.ran ? startsFromRunning(heated, input.ran) : startsFromAlarms(heated, input);
  const planned = heated.map((span, i) => ({ start: started.starts[i]!, end: span.end - started.runOutMs }));
  const all = input.ran ? mergeIntervals([...planned, ...input.ran]) : planned;
  return { planned: without(all), from: input.ran ? 'running' : 'heats' };

  function heatedSpans({ machine, digest }: ProductionInput): Interval[] {
    const minutes = heatedMinutes(machine, digest, settings.heatedShare);
    return mergeIntervals(runsOf(minutes, 1, digest), settings.shortestOffMs);
  }
}

interface Starts {
  /** By heated span: when production was due. */
  readonly starts: readonly number[];
  readonly runOutMs: number;
}

function startsFromRunning(heated: readonly Interval[], ran: readonly Interval[]): Starts {
  const first = heated.map((span) => intersectIntervals(ran, [span])[0]?.start ?? NaN);
  const last = heated.map((span) => intersectIntervals(ran, [span]).at(-1)?.end ?? NaN);
  const usualMs = median(heated.slice(1).map((span, i) => first[i + 1]! - span.start)); // the first may be cut off
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
function startsFromAlarms(heated: readonly Interval[], { machine, alarms }: ProductionInput): Starts {
  const own = alarms.filter((alarm) => alarm.kind === 'machine-stop' && isOf(alarm, machine));
  const waits = heated.slice(1).flatMap((span) => {
    const first = own.find(({ startMs }) => startMs >= span.start && startMs < span.end);
    return first ? [first.startMs - span.start] : [];
  });
  const shortest = Math.min(...waits);
  const mean = waits.reduce((sum, wait) => sum + wait, 0) / waits.length;
  const leadMs = waits.length < 3 ? 0 : Math.max(0, shortest - (mean - shortest) / (waits.length - 1));
  return { starts: heated.map(({ start }) => start + leadMs), runOutMs: 0 };
}

/** Alarms that name no machine count for every machine only when there is no other way to tell. */
export function isOf(alarm: AlarmSpan, machine: Machine): boolean {
  return alarm.machine === machine.name;
}
