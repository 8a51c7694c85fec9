import { DateTime } from 'luxon';
import type { AlarmSpan } from '../model/alarm.js';
import type { AlarmCount, AlarmFindings, MachineClockShift } from '../model/alarm-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { Zone } from '../model/zone.js';
import { totalLength, type Interval } from '../maths/intervals.js';
import { median } from '../maths/quantile.js';
import { contradictionsOf } from './contradictions.js';
import { alarmName, countOf, countsOf, endWithin, groupBy } from './counts.js';
import { chatterOf, floodsOf, peakPerTenMinutes } from './floods.js';
import { shiftNamer } from './shift-name.js';
import { alarmDefaults, type AlarmThresholds } from './thresholds.js';

export interface AlarmInput {
  /** By start, on the temperature log's clock. */
  readonly alarms: readonly AlarmSpan[];
  readonly hasLog: boolean;
  readonly zones: readonly Zone[];
  /** Time covered, ms. */
  readonly window: Interval;
  /** Indices of zones judged to have a fault, the first to repair first. */
  readonly faultyZones: readonly number[];
  /** By zone index: spans in which the readings show an open input or a code, ms. */
  readonly opensByZone: readonly (readonly Interval[])[];
  readonly plant: PlantFile;
  readonly clockShiftSeconds: number | null;
  readonly clockShiftsByMachine: readonly MachineClockShift[];
}

/** Measures of the alarm logs by ISA-18.2 / IEC 62682 / EEMUA 191; measures.md defines each. Never throws. */
export function alarmFindings(input: AlarmInput, limits: AlarmThresholds = alarmDefaults): AlarmFindings {
  const { zones, window, plant } = input;
  const alarms = input.alarms.filter(({ startMs }) => startMs >= window.start && startMs < window.end);
  const starts = Float64Array.from(alarms, ({ startMs }) => startMs);
  const hours = Math.max(0, window.end - window.start) / 3_600_000;
  const per = (unitHours: number) => (hours === 0 ? 0 : (alarms.length * unitHours) / hours);
  const byName = groupBy(alarms, alarmName);
  const total = alarms.length;
  const counts = (keyOf: (alarm: AlarmSpan) => string | null) => countsOf(groupBy(alarms, keyOf), total, window.end);
  const floods = floodsOf(starts, limits);
  const clockZone = plant.timezone ?? 'utc';
  const shiftOf = shiftNamer(plant);
  return {
    hasLog: input.hasLog,
    activations: total,
    hoursCovered: hours,
    perTenMinutesMean: per(1 / 6),
    perTenMinutesPeak: peakPerTenMinutes(starts),
    perHourMean: per(1),
    perDayMean: per(24),
    medianSecondsToAcknowledge: medianSeconds(alarms.map((alarm) => alarm.acknowledgedMs - alarm.startMs)),
    medianSecondsToClear: medianSeconds(alarms.map((alarm) => alarm.endMs - alarm.startMs)),
    floods: floods.map(({ startMs, endMs, count, peakPerTenMinutes: peak }) => ({
      start: iso(startMs),
      end: iso(endMs),
      count,
      peakPerTenMinutes: peak,
    })),
    shareOfTimeInFlood: shareInFlood(floods, window),
    chattering: chattering(byName, total, window.end, limits),
    fleeting: fleeting(byName, total, window.end, limits),
    stale: stale(input.alarms, window, limits),
    mostFrequent: countsOf(byName, total, window.end).slice(0, limits.mostFrequent),
    byZone: byZone(alarms, zones, window.end),
    byMachine: counts(({ machine }) => machine),
    byPriority: counts(({ priority }) => priority),
    byShift: counts(({ startMs }) => shiftOf(startMs)),
    byDay: [...groupBy(alarms, ({ startMs }) => DateTime.fromMillis(startMs, { zone: clockZone }).toISODate())].map(
      ([day, own]) => ({ day, count: own.length }),
    ),
    removable: removable(alarms, zones, input.faultyZones),
    contradictions: input.hasLog ? contradictionsOf(alarms, zones, input.opensByZone) : [],
    clockShiftSeconds: input.clockShiftSeconds,
    clockShiftsByMachine: input.clockShiftsByMachine,
    thresholds: { ...limits },
  };
}

function iso(timeMs: number): string {
  return new Date(timeMs).toISOString();
}

function medianSeconds(lengthsMs: readonly number[]): number | null {
  const middle = median(lengthsMs) / 1000;
  return Number.isFinite(middle) ? middle : null;
}

function shareInFlood(floods: readonly { startMs: number; endMs: number }[], { start, end }: Interval): number {
  if (end <= start) return 0;
  const inside = floods.map(({ startMs, endMs }) => ({ start: startMs, end: Math.min(end, endMs) }));
  return totalLength(inside) / (end - start);
}

type ByName = ReadonlyMap<string, readonly AlarmSpan[]>;

function chattering(byName: ByName, total: number, endMs: number, limits: AlarmThresholds): AlarmCount[] {
  return mostFirst(
    [...byName].map(([name, alarms]) => {
      const count = chatterOf(
        alarms.map(({ startMs }) => startMs),
        limits,
      );
      return countOf(name, count, alarms, total, endMs);
    }),
  );
}

/** Gone within seconds, and the same alarm does not come back at once (that would be chatter). */
function fleeting(byName: ByName, total: number, endMs: number, limits: AlarmThresholds): AlarmCount[] {
  const windowMs = limits.chatterWindowSeconds * 1000;
  return mostFirst(
    [...byName].map(([name, alarms]) => {
      const own = alarms.filter((alarm, i) => {
        const isShort = alarm.endMs > alarm.startMs && alarm.endMs - alarm.startMs <= limits.fleetingSeconds * 1000;
        const before = alarms[i - 1]?.startMs ?? -Infinity;
        const after = alarms[i + 1]?.startMs ?? Infinity;
        return isShort && alarm.startMs - before >= windowMs && after - alarm.startMs >= windowMs;
      });
      return countOf(name, own.length, own, total, endMs);
    }),
  );
}

function mostFirst(counts: readonly AlarmCount[]): AlarmCount[] {
  const nameOf = ({ machine = '', name }: AlarmCount) => `${name} ${machine}`;
  return counts
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count || nameOf(a).localeCompare(nameOf(b)));
}

/** Alarms that stand in the window for long, whether or not they came in it. */
function stale(
  alarms: readonly AlarmSpan[],
  window: Interval,
  { staleHours }: AlarmThresholds,
): AlarmFindings['stale'] {
  return alarms
    .filter(({ startMs, endMs }) => startMs < window.end && !(endMs <= window.start))
    .map((alarm) => ({
      name: alarmName(alarm),
      since: iso(alarm.startMs),
      hours: (endWithin(alarm, window.end) - alarm.startMs) / 3_600_000,
      isActive: !(alarm.endMs < window.end),
    }))
    .filter(({ hours }) => hours > staleHours)
    .sort((a, b) => b.hours - a.hours);
}

/** By zone, not by its name: two machines may have a zone of one name. */
function byZone(alarms: readonly AlarmSpan[], zones: readonly Zone[], endMs: number): AlarmCount[] {
  const counts = zones.flatMap(({ index, name, machine }) => {
    const own = alarms.filter(({ zone }) => zone === index);
    return own.length === 0 ? [] : [{ ...countOf(name, own.length, own, alarms.length, endMs), machine }];
  });
  return mostFirst(counts);
}

/** What repairing zones one after the other removes, the most talkative first. */
function removable(
  alarms: readonly AlarmSpan[],
  zones: readonly Zone[],
  faulty: readonly number[],
): AlarmFindings['removable'] {
  const countsByZone = faulty
    .flatMap((index) => zones[index] ?? [])
    .map(({ index, name, machine }) => ({
      zone: name,
      machine,
      count: alarms.filter((alarm) => alarm.zone === index).length,
    }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
  let removed = 0;
  return countsByZone.map(({ zone, machine, count }) => {
    removed += count;
    return { zone, machine, count, cumulativeShare: removed / alarms.length };
  });
}
