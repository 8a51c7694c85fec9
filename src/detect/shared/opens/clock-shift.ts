import type { AlarmSubject } from '../../../model/alarm.js';
import type { AlarmList } from '../../../model/alarm-list.js';
import type { Evidence } from '../../../model/detector.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { median } from '../../../maths/quantile.js';
import { samplingMsOf } from '../basics/sampling.js';

/** By how much the alarm clock is off the temperature log's, and the alarms put right. */
export interface ClockShift {
  /** Alarms with the shift added to all their times; the given ones where no shift was found. */
  readonly alarms: AlarmList;
  /** To add to the alarm clock to match the temperature log; 0 when the clocks agree or it cannot be told. */
  readonly shiftMs: number;
  /** Log events that an alarm answers with this shift. */
  readonly matchedCount: number;
  /** Log events that an alarm could have answered. */
  readonly eventCount: number;
  /** False when matching events are too few to tell: the shift is then 0, unproven. */
  readonly isSure: boolean;
  /** Machines whose own alarm clock is off while the plant's as a whole is not; what was added to their alarms. */
  readonly byMachine: readonly MachineShift[];
}

/** What is added to the alarm times of one machine. */
export interface MachineShift {
  readonly machine: string;
  readonly shiftMs: number;
}

/** Clocks differ by seconds to an hour, with summer time and drift a little more (common practice). */
const LARGEST_SHIFT_MS = 75 * MINUTE_MS;
/** An alarm follows its event within this, beside the sampling time: filter and alarm delay (common practice). */
const ALARM_DELAY_MS = 10_000;
const FEWEST_MATCHES = 3;
const SMALLEST_MATCHED_SHARE = 0.5;
/** A shift must match so many times more than no shift does (own choice). */
const TIMES_BETTER = 1.5;

/** One machine has fewer events than the plant, so more is asked of it (own choice). */
const FEWEST_OWN_MATCHES = 5;
const SMALLEST_OWN_SHARE = 0.8;

/** An event of the log and the alarms that could belong to it, both by one key: a zone or a machine. */
interface Pairing {
  readonly eventsMs: readonly number[];
  readonly alarmsMs: Float64Array;
  readonly toleranceMs: number;
  readonly samplingMs: number;
}

/**
 * Finds by how much the alarm clock is off, from sensor alarms against the starts of bad runs of the same zone and
 * stop alarms against the moments at which the machine stops, and corrects all alarm times for it.
 *
 * @returns Never throws. `isSure` is false without enough matching events.
 */
export function correctAlarmClock(evidence: Evidence): ClockShift {
  const near = { ...evidence, alarms: alarmsNear(evidence) };
  const pairings = [...zonePairings(near), ...machinePairings(near)];
  const eventCount = pairings.reduce((sum, p) => sum + Math.min(p.eventsMs.length, p.alarmsMs.length), 0);
  const unproven = { alarms: evidence.alarms, shiftMs: 0, matchedCount: 0, eventCount, isSure: false, byMachine: [] };
  if (eventCount < FEWEST_MATCHES) return unproven;
  const candidates = shiftCandidates(pairings);
  const atZero = countMatches(pairings, 0);
  let best = { shiftMs: 0, matched: atZero };
  for (const shiftMs of candidates) {
    const matched = countMatches(pairings, shiftMs);
    const isCloser = matched === best.matched && Math.abs(shiftMs) < Math.abs(best.shiftMs);
    if (matched > best.matched || isCloser) best = { shiftMs, matched };
  }
  const isProven = best.matched >= FEWEST_MATCHES && best.matched >= SMALLEST_MATCHED_SHARE * eventCount;
  if (!isProven) return unproven;
  const isBetter = best.matched >= TIMES_BETTER * atZero && best.matched >= atZero + 2;
  if (!isBetter) return { ...unproven, matchedCount: atZero, isSure: atZero >= FEWEST_MATCHES };
  const shiftMs = Math.round(refineShift(pairings, best.shiftMs) / 1000) * 1000;
  return {
    alarms: evidence.alarms.laterBy(() => shiftMs),
    shiftMs,
    matchedCount: best.matched,
    eventCount,
    isSure: true,
    byMachine: [],
  };
}

/** Alarm lists often hold more weeks than the log; alarms of the others have no event here that they could answer. */
function alarmsNear({ alarms, digest: { startMs: logStartMs, periodMs, length } }: Evidence): AlarmList {
  const { startMs } = alarms.columns;
  const [fromMs, toMs] = [logStartMs - LARGEST_SHIFT_MS, logStartMs + length * periodMs + LARGEST_SHIFT_MS];
  return alarms.where((place) => startMs[place]! >= fromMs && startMs[place]! <= toMs);
}

/**
 * As {@link correctAlarmClock}; where the plant's alarm clock as a whole is right, or cannot be told, each machine is
 * asked alone, for each may have a recorder of its own.
 */
export function correctAlarmClocks(evidence: Evidence): ClockShift {
  const common = correctAlarmClock(evidence);
  const machines = [...new Set(evidence.zones.map(({ machine }) => machine))];
  if (common.shiftMs !== 0 || machines.length < 2) return common;
  const byMachine = machines.flatMap((machine) => {
    const { shiftMs, matchedCount, eventCount } = correctAlarmClock(ofMachine(evidence, machine));
    const isProven = matchedCount >= FEWEST_OWN_MATCHES && matchedCount >= SMALLEST_OWN_SHARE * eventCount;
    return shiftMs !== 0 && isProven ? [{ machine, shiftMs }] : [];
  });
  const shiftOf = new Map(byMachine.map(({ machine, shiftMs }) => [machine, shiftMs]));
  const alarms = evidence.alarms.laterBy((subject) => shiftOf.get(machineOf(evidence, subject) ?? '') ?? 0);
  return { ...common, alarms, byMachine };
}

function ofMachine(evidence: Evidence, machine: string): Evidence {
  return {
    ...evidence,
    zones: evidence.zones.filter((zone) => zone.machine === machine),
    alarms: evidence.alarms.about((subject) => machineOf(evidence, subject) === machine),
  };
}

function machineOf({ zones }: Evidence, { zone, machine }: AlarmSubject): string | null {
  return zone === null ? machine : (zones[zone]?.machine ?? null);
}

function zonePairings({ zones, episodes, alarms }: Evidence): Pairing[] {
  const runs = episodes.get('open-runs') ?? [];
  return zones.map((zone) => ({
    eventsMs: (runs[zone.index] ?? []).map((run) => run.startMs),
    alarmsMs: alarms.about((a) => a.zone === zone.index && (a.kind === 'sensor-open' || a.kind === 'sensor-fault'))
      .columns.startMs,
    toleranceMs: samplingMsOf(zone) + ALARM_DELAY_MS,
    samplingMs: samplingMsOf(zone),
  }));
}

function machinePairings({ zones, digest, alarms }: Evidence): Pairing[] {
  const firstOfMachine = new Map(zones.filter((z) => z.has.running).map((z) => [z.machine, z] as const));
  return [...firstOfMachine].map(([machine, zone]) => ({
    eventsMs: stopStartsMs(digest.zones[zone.index]!.runningShare, digest.startMs, digest.periodMs),
    alarmsMs: alarms.about((a) => a.kind === 'machine-stop' && (a.machine === machine || a.machine === null)).columns
      .startMs,
    toleranceMs: digest.periodMs + samplingMsOf(zone) + ALARM_DELAY_MS,
    samplingMs: Math.max(digest.periodMs, samplingMsOf(zone)),
  }));
}

/** Moments at which the running share leaves 1, to the accuracy of the digest; the share inside the period refines it. */
function stopStartsMs(runningShare: Float32Array, startMs: number, periodMs: number): number[] {
  const stops: number[] = [];
  let before = NaN; // slow logs leave places empty
  runningShare.forEach((runs, i) => {
    if (before === 1 && runs < 1) {
      const share = runningShare[i + 1] === 0 ? runs : 0;
      stops.push(startMs + (i + share) * periodMs);
    }
    if (!Number.isNaN(runs)) before = runs;
  });
  return stops;
}

/** Differences seen, rounded to the matching tolerance, most frequent first; a few hundred at most. */
function shiftCandidates(pairings: readonly Pairing[]): number[] {
  const votes = new Map<number, number>();
  for (const { eventsMs, alarmsMs, toleranceMs } of pairings) {
    const stepMs = toleranceMs / 2;
    forEachNear(eventsMs, alarmsMs, LARGEST_SHIFT_MS, (differenceMs) => {
      const rounded = Math.round(differenceMs / stepMs) * stepMs;
      votes.set(rounded, (votes.get(rounded) ?? 0) + 1);
    });
  }
  return [...votes]
    .sort((a, b) => b[1] - a[1] || Math.abs(a[0]) - Math.abs(b[0]))
    .slice(0, 200)
    .map(([shift]) => shift);
}

function forEachNear(
  eventsMs: readonly number[],
  alarmsMs: Float64Array,
  withinMs: number,
  visit: (d: number) => void,
): void {
  let from = 0;
  for (const alarmMs of alarmsMs) {
    while (from < eventsMs.length && eventsMs[from]! < alarmMs - withinMs) from++;
    for (let i = from; i < eventsMs.length && eventsMs[i]! <= alarmMs + withinMs; i++) visit(eventsMs[i]! - alarmMs);
  }
}

/** Pairs of events and alarms, each used once, that lie within tolerance after the shift. */
function countMatches(pairings: readonly Pairing[], shiftMs: number): number {
  let count = 0;
  for (const pairing of pairings) count += matchedDifferences(pairing, shiftMs).length;
  return count;
}

function matchedDifferences({ eventsMs, alarmsMs, toleranceMs }: Pairing, shiftMs: number): number[] {
  const differences: number[] = [];
  let i = 0;
  for (const alarmMs of alarmsMs) {
    const atMs = alarmMs + shiftMs;
    while (i < eventsMs.length && eventsMs[i]! < atMs - toleranceMs) i++;
    if (i < eventsMs.length && eventsMs[i]! <= atMs + toleranceMs) differences.push(eventsMs[i++]! - alarmMs);
  }
  return differences;
}

/** The log sees an event half a sampling time late on average, so that much is taken off the median difference. */
function refineShift(pairings: readonly Pairing[], shiftMs: number): number {
  const differences = pairings.flatMap((pairing) =>
    matchedDifferences(pairing, shiftMs).map((difference) => difference - pairing.samplingMs / 2),
  );
  return median(differences);
}
