import { DateTime } from 'luxon';
import type { Findings } from '../model/findings.js';
import type { HistoryFindings } from '../model/history-findings.js';

interface Day {
  alarms: number;
  zoneFaultMinutes: number;
  otherMinutes: number;
}

const MS_PER_DAY = 86_400_000;

/**
 * Alarms and downtime by ISO week over all runs. Where runs overlap, the one that ends last counts for the days both
 * cover, so nothing is counted twice; a day that two runs cover in halves is added up.
 */
export function weeksOf(runs: readonly Findings[]): HistoryFindings['weeks'] {
  const latestFirst = [...runs].sort((a, b) => b.window.end.localeCompare(a.window.end));
  const taken: { start: number; end: number }[] = [];
  const days = new Map<string, Day>();
  for (const run of latestFirst) {
    const window = { start: Date.parse(run.window.start), end: Date.parse(run.window.end) };
    for (const [day, own] of daysOf(run)) {
      const from = Math.max(window.start, Date.parse(day));
      const to = Math.min(window.end, Date.parse(day) + MS_PER_DAY);
      if (taken.some(({ start, end }) => start < to && end > from)) continue;
      const sum = days.get(day) ?? { alarms: 0, zoneFaultMinutes: 0, otherMinutes: 0 };
      sum.alarms += own.alarms;
      sum.zoneFaultMinutes += own.zoneFaultMinutes;
      sum.otherMinutes += own.otherMinutes;
      days.set(day, sum);
    }
    taken.push(window);
  }
  return byWeek(days, runs);
}

function daysOf({ alarms, downtime }: Findings): Map<string, Day> {
  const days = new Map<string, Day>();
  const at = (day: string) => {
    const known = days.get(day) ?? { alarms: 0, zoneFaultMinutes: 0, otherMinutes: 0 };
    days.set(day, known);
    return known;
  };
  for (const { day, count } of alarms.byDay) at(day).alarms += count;
  for (const { day, zoneFaultMinutes, otherMinutes, unknownMinutes } of downtime.byDay ?? []) {
    at(day).zoneFaultMinutes += zoneFaultMinutes;
    at(day).otherMinutes += otherMinutes + unknownMinutes;
  }
  return days;
}

function byWeek(days: ReadonlyMap<string, Day>, runs: readonly Findings[]): HistoryFindings['weeks'] {
  const weeks = new Map<string, Day>();
  for (const [day, own] of days) {
    const week = weekOf(day);
    const sum = weeks.get(week) ?? { alarms: 0, zoneFaultMinutes: 0, otherMinutes: 0 };
    weeks.set(week, {
      alarms: sum.alarms + own.alarms,
      zoneFaultMinutes: sum.zoneFaultMinutes + own.zoneFaultMinutes,
      otherMinutes: sum.otherMinutes + own.otherMinutes,
    });
  }
  const faulty = new Map(
    runs.map(({ window, zones }) => [
      weekOf(justBefore(window.end)),
      zones.filter(({ status }) => status === 'faulty').length,
    ]),
  );
  const names = [...new Set([...weeks.keys(), ...faulty.keys()])].sort();
  return names.map((week) => ({
    week,
    ...(weeks.get(week) ?? { alarms: 0, zoneFaultMinutes: 0, otherMinutes: 0 }),
    zonesFaulty: faulty.get(week) ?? 0,
  }));
}

/** A window that ends on Monday 00:00 belongs to the week before. */
function justBefore(time: string): string {
  return new Date(Date.parse(time) - 1).toISOString();
}

function weekOf(day: string): string {
  return DateTime.fromISO(day, { zone: 'utc' }).toFormat("kkkk-'W'WW");
}
