import { DateTime } from 'luxon';
import type { Findings } from '../model/findings.js';
import type { HistoryFindings } from '../model/history-findings.js';
import { DAY_MS } from '../model/time-units.js';

interface Day {
  coveredDays: number;
  alarms: number;
  zoneFaultMinutes: number;
  otherMinutes: number;
  unknownMinutes: number;
}

const nothing: Readonly<Day> = { coveredDays: 0, alarms: 0, zoneFaultMinutes: 0, otherMinutes: 0, unknownMinutes: 0 };

/** What one run says about a day, and the part of the day that its window covers, UTC ms. */
interface Part extends Day {
  readonly start: number;
  readonly end: number;
}

/**
 * Alarms and downtime by ISO week of the plant's clock over all runs, so days and weeks begin at its midnight, also
 * where the clock changes. Where runs overlap in a day, the one that covers most of it counts, of equals the one that
 * ends last, so nothing is counted twice; a day that two runs cover in parts is added up.
 */
export function weeksOf(runs: readonly Findings[]): HistoryFindings['weeks'] {
  const latestFirst = [...runs].sort((a, b) => b.window.end.localeCompare(a.window.end));
  const partsOf = new Map<string, Part[]>();
  for (const [day, part] of latestFirst.flatMap(partsOfRun)) {
    partsOf.set(day, [...(partsOf.get(day) ?? []), part]);
  }
  const days = new Map([...partsOf].map(([day, parts]) => [day, sumOf(withoutOverlap(parts))]));
  return byWeek(days, runs);
}

/** All days of a run's window by its clock, those without any event as well. */
function partsOfRun(run: Findings): (readonly [string, Part])[] {
  const [start, end] = [run.window.start, run.window.end].map((time) => Date.parse(time)) as [number, number];
  const counts = countsByDay(run);
  const parts: (readonly [string, Part])[] = [];
  let midnight = DateTime.fromISO(run.window.start, { zone: run.timezone ?? 'utc' }).startOf('day');
  while (midnight.toMillis() < end) {
    const next = midnight.plus({ days: 1 }); // 23 or 25 h further when the clock changes
    const day = midnight.toISODate() ?? '';
    const within = { start: Math.max(start, midnight.toMillis()), end: Math.min(end, next.toMillis()) };
    const coveredDays = (within.end - within.start) / DAY_MS;
    parts.push([day, { ...(counts.get(day) ?? nothing), ...within, coveredDays }]);
    midnight = next;
  }
  return parts;
}

/** @param parts Of one day, the run that ends last first. */
function withoutOverlap(parts: readonly Part[]): Part[] {
  const kept: Part[] = [];
  for (const part of [...parts].sort((a, b) => b.end - b.start - (a.end - a.start))) {
    if (!kept.some(({ start, end }) => start < part.end && end > part.start)) kept.push(part);
  }
  return kept;
}

function sumOf(days: readonly Day[]): Day {
  const sum = { ...nothing };
  for (const day of days) {
    sum.coveredDays += day.coveredDays;
    sum.alarms += day.alarms;
    sum.zoneFaultMinutes += day.zoneFaultMinutes;
    sum.otherMinutes += day.otherMinutes;
    sum.unknownMinutes += day.unknownMinutes;
  }
  return sum;
}

function countsByDay({ alarms, downtime }: Findings): Map<string, Day> {
  const days = new Map<string, Day>();
  const at = (day: string) => {
    const known = days.get(day) ?? { ...nothing };
    days.set(day, known);
    return known;
  };
  for (const { day, count } of alarms.byDay) at(day).alarms += count;
  for (const { day, zoneFaultMinutes, otherMinutes, unknownMinutes } of downtime.byDay ?? []) {
    at(day).zoneFaultMinutes += zoneFaultMinutes;
    at(day).otherMinutes += otherMinutes;
    at(day).unknownMinutes += unknownMinutes;
  }
  return days;
}

function byWeek(days: ReadonlyMap<string, Day>, runs: readonly Findings[]): HistoryFindings['weeks'] {
  const daysOfWeek = new Map<string, Day[]>();
  for (const [day, own] of days) {
    const week = weekName(DateTime.fromISO(day, { zone: 'utc' }));
    daysOfWeek.set(week, [...(daysOfWeek.get(week) ?? []), own]);
  }
  const weeks = new Map([...daysOfWeek].map(([week, own]) => [week, sumOf(own)]));
  const faulty = new Map(runs.flatMap(faultyByWeek));
  const names = [...new Set([...weeks.keys(), ...faulty.keys()])].sort();
  return names.map((week) => ({
    week,
    ...(weeks.get(week) ?? nothing),
    zonesFaulty: faulty.get(week) ?? null,
  }));
}

const HALF_WEEK_MS = 3.5 * DAY_MS;

/**
 * Zones that were faulty in each week of a run, by when their faults came and went. The weeks are those around times
 * from half a week before its end backwards: a run made on Monday morning is about the week before.
 */
function faultyByWeek({ window, timezone, zones }: Findings): (readonly [string, number])[] {
  const [start, end] = [window.start, window.end].map((time) => DateTime.fromISO(time, { zone: timezone ?? 'utc' }));
  const faulty = zones.filter(({ status }) => status === 'faulty');
  const weeks: (readonly [string, number])[] = [];
  let within = end!.minus(Math.min(HALF_WEEK_MS, (end!.toMillis() - start!.toMillis()) / 2));
  for (; within >= start!; within = within.minus({ weeks: 1 })) {
    const [monday, sunday] = [within.startOf('week').toMillis(), within.endOf('week').toMillis()];
    const inWeek = faulty.filter(
      ({ onset, fixed }) => !(Date.parse(onset ?? '') > sunday) && !(Date.parse(fixed ?? '') < monday), // NaN is open
    );
    weeks.push([weekName(within), inWeek.length]);
  }
  return weeks;
}

function weekName(time: DateTime): string {
  return time.toFormat("kkkk-'W'WW");
}
