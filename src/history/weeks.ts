import { DateTime } from 'luxon';
import type { Findings } from '../model/findings.js';
import type { HistoryFindings } from '../model/history-findings.js';

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
  for (const run of latestFirst) {
    for (const [day, own] of daysOf(run)) {
      const { start, end } = coveredOf(day, run);
      const part = { ...own, start, end, coveredDays: (end - start) / 86_400_000 };
      partsOf.set(day, [...(partsOf.get(day) ?? []), part]);
    }
  }
  const days = new Map([...partsOf].map(([day, parts]) => [day, sumOf(withoutOverlap(parts))]));
  return byWeek(days, runs);
}

/** The part of a day that a run covers; days are those of its clock. */
function coveredOf(day: string, { window, timezone }: Findings): { start: number; end: number } {
  const midnight = DateTime.fromISO(day, { zone: timezone ?? 'utc' });
  return {
    start: Math.max(Date.parse(window.start), midnight.toMillis()),
    end: Math.min(Date.parse(window.end), midnight.plus({ days: 1 }).toMillis()), // 23 or 25 h when the clock changes
  };
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

/** All days of a run's window, those without any event as well. */
function daysOf({ alarms, downtime, window, timezone }: Findings): Map<string, Day> {
  const days = new Map<string, Day>();
  const at = (day: string) => {
    const known = days.get(day) ?? { ...nothing };
    days.set(day, known);
    return known;
  };
  const endMs = Date.parse(window.end);
  let midnight = DateTime.fromISO(window.start, { zone: timezone ?? 'utc' }).startOf('day');
  for (; midnight.toMillis() < endMs; midnight = midnight.plus({ days: 1 })) at(midnight.toISODate() ?? '');
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

const HALF_WEEK_MS = 3.5 * 86_400_000;

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
