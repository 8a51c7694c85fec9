import type { AlarmSubject } from '../model/alarm.js';
import type { AlarmCount, AlarmFindings, MachineClockShift } from '../model/alarm-findings.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantFile } from '../model/plant-file.js';
import type { Zone } from '../model/zone.js';
import { HOUR_MS } from '../model/time-units.js';
import { calendarOf } from '../maths/calendar.js';
import { totalLength, type Interval } from '../maths/intervals.js';
import { median } from '../maths/quantile.js';
import { contradictionsOf } from './contradictions.js';
import { alarmName, countOf, countsOf, endWithin, groupBy, groupByStart, type AlarmTimes } from './counts.js';
import { chatterOf, floodsOf, peakPerTenMinutes } from './floods.js';
import { removableBy, type FaultyZone } from './removable.js';
import { shiftNamer } from './shift-name.js';
import { alarmDefaults, type AlarmThresholds } from './thresholds.js';

export interface AlarmInput {
  /** By start, on the temperature log's clock. */
  readonly alarms: AlarmList;
  readonly hasLog: boolean;
  readonly zones: readonly Zone[];
  /** Time covered, ms. */
  readonly window: Interval;
  /** Zones judged to have a fault. */
  readonly faultyZones: readonly FaultyZone[];
  /** By zone index: spans in which the readings show an open input or a code, ms. */
  readonly opensByZone: readonly (readonly Interval[])[];
  readonly plant: PlantFile;
  readonly clockShiftSeconds: number | null;
  readonly clockShiftsByMachine: readonly MachineClockShift[];
}

/** Measures of the alarm logs by ISA-18.2 / IEC 62682 / EEMUA 191; measures.md defines each. Never throws. */
export function alarmFindings(input: AlarmInput, limits: AlarmThresholds = alarmDefaults): AlarmFindings {
  const { zones, window, plant } = input;
  const alarms = startingWithin(input.alarms, window);
  const { startMs: starts, acknowledgedMs, endMs } = alarms.columns;
  const hours = Math.max(0, window.end - window.start) / HOUR_MS;
  const per = (unitHours: number) => (hours === 0 ? 0 : (alarms.length * unitHours) / hours);
  const byName = groupBy(alarms, alarmName);
  const total = alarms.length;
  const countsBy = (keyOf: (subject: AlarmSubject) => string | null) =>
    countsOf(groupBy(alarms, keyOf), total, window.end);
  const dayAt = calendarOf(plant.timezone ?? 'utc', 'day');
  const floods = floodsOf(starts, limits);
  return {
    hasLog: input.hasLog,
    activations: total,
    hoursCovered: hours,
    perTenMinutesMean: per(1 / 6),
    perTenMinutesPeak: peakPerTenMinutes(starts),
    perHourMean: per(1),
    perDayMean: per(24),
    medianSecondsToAcknowledge: medianSeconds(acknowledgedMs.map((timeMs, i) => timeMs - starts[i]!)),
    medianSecondsToClear: medianSeconds(endMs.map((timeMs, i) => timeMs - starts[i]!)),
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
    byMachine: countsBy(({ machine }) => machine),
    byPriority: byPriority(alarms, window.end),
    byShift: countsOf(groupByStart(alarms, shiftNamer(plant)), total, window.end),
    byDay: [...groupByStart(alarms, (startMs) => dayAt(startMs).name)].map(([day, own]) => ({
      day,
      count: own.length,
    })),
    removable: removableBy(alarms, zones, input.faultyZones),
    contradictions: input.hasLog ? contradictionsOf(alarms, zones, input.opensByZone) : [],
    clockShiftSeconds: input.clockShiftSeconds,
    clockShiftsByMachine: input.clockShiftsByMachine,
    thresholds: { ...limits },
  };
}

function startingWithin(alarms: AlarmList, { start, end }: Interval): AlarmList {
  const { startMs } = alarms.columns;
  return alarms.where((place) => startMs[place]! >= start && startMs[place]! < end);
}

function iso(timeMs: number): string {
  return new Date(timeMs).toISOString();
}

function medianSeconds(lengthsMs: Float64Array): number | null {
  const middle = median(lengthsMs) / 1000;
  return Number.isFinite(middle) ? middle : null;
}

function shareInFlood(floods: readonly { startMs: number; endMs: number }[], { start, end }: Interval): number {
  if (end <= start) return 0;
  const inside = floods.map(({ startMs, endMs }) => ({ start: startMs, end: Math.min(end, endMs) }));
  return totalLength(inside) / (end - start);
}

type ByName = ReadonlyMap<string, AlarmList>;

function chattering(byName: ByName, total: number, endMs: number, limits: AlarmThresholds): AlarmCount[] {
  return mostFirst(
    [...byName].map(([name, alarms]) => {
      const count = chatterOf(alarms.columns.startMs, limits);
      return countOf(name, count, alarms, total, endMs);
    }),
  );
}

/** Gone within seconds, and the same alarm does not come back at once (that would be chatter). */
function fleeting(byName: ByName, total: number, endMs: number, limits: AlarmThresholds): AlarmCount[] {
  const windowMs = limits.chatterWindowSeconds * 1000;
  return mostFirst(
    [...byName].map(([name, alarms]) => {
      const { startMs, endMs: goneMs } = alarms.columns;
      const own = alarms.where((i) => {
        const atMs = startMs[i]!;
        const isShort = goneMs[i]! > atMs && goneMs[i]! - atMs <= limits.fleetingSeconds * 1000;
        const before = startMs[i - 1] ?? -Infinity;
        const after = startMs[i + 1] ?? Infinity;
        return isShort && atMs - before >= windowMs && after - atMs >= windowMs;
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
function stale(alarms: AlarmList, window: Interval, { staleHours }: AlarmThresholds): AlarmFindings['stale'] {
  const hoursOf = (alarm: AlarmTimes) => (endWithin(alarm, window.end) - alarm.startMs) / HOUR_MS;
  const { startMs, endMs } = alarms.columns;
  const long = alarms.where((place) => {
    const times = { startMs: startMs[place]!, endMs: endMs[place]! };
    const isInWindow = times.startMs < window.end && !(times.endMs <= window.start);
    return isInWindow && hoursOf(times) > staleHours;
  });
  return [...long]
    .map((alarm) => ({
      name: alarmName(alarm),
      since: iso(alarm.startMs),
      hours: hoursOf(alarm),
      isActive: !(alarm.endMs < window.end),
    }))
    .sort((a, b) => b.hours - a.hours);
}

/** By zone, not by its name: two machines may have a zone of one name. */
function byZone(alarms: AlarmList, zones: readonly Zone[], endMs: number): AlarmCount[] {
  const counts = zones.flatMap(({ index, name, machine }) => {
    const own = alarms.about(({ zone }) => zone === index);
    return own.length === 0 ? [] : [{ ...countOf(name, own.length, own, alarms.length, endMs), machine }];
  });
  return mostFirst(counts);
}

/** Share of the alarms that carry a priority: the usual 80 / 15 / 5 % are meant of those. */
function byPriority(alarms: AlarmList, endMs: number): AlarmCount[] {
  const groups = groupBy(alarms, ({ priority }) => priority);
  const told = [...groups.values()].reduce((sum, own) => sum + own.length, 0);
  return countsOf(groups, told, endMs);
}
