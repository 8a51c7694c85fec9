import type { Evidence } from '../../../model/detector.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { correctAlarmClock, correctAlarmClocks, type ClockShift } from './clock-shift.js';

export interface AlarmClock extends ClockShift {
  /** Where the alarm clock passes over a change of the clock: what was added on its two sides, in order of time. */
  readonly bySide: readonly SideShift[];
}

export interface SideShift {
  /** UTC ms from which it holds, and until the next; -Infinity for the first. */
  readonly fromMs: number;
  readonly shiftMs: number;
}

/** Clocks are changed by an hour (Directive 2000/84/EC; in the USA 15 U.S.C. 260a); refining leaves some seconds. */
const CHANGE_MS = HOUR_MS;
const TOLERANCE_MS = 60_000;
/** Each side must speak for itself (own choice, as for one machine alone). */
const FEWEST_MATCHES = 5;
const SMALLEST_SHARE = 0.8;

/**
 * As {@link correctAlarmClocks}; an alarm log that stays on winter time beside a log on summer time, or the other way
 * round, gets a shift for each side of the change, where the matching events of both sides say so.
 *
 * @param changesMs Moments inside the window at which the clocks of the time zone are changed, UTC ms, rising.
 */
export function correctAlarmsAcrossChange(evidence: Evidence, changesMs: readonly number[]): AlarmClock {
  const whole = { ...correctAlarmClocks(evidence), bySide: [] };
  const change = changesMs.map((changeMs) => sidesOf(evidence, changeMs)).find((sides) => sides !== null);
  if (!change) return whole;
  const shiftAt = (timeMs: number): number => change.findLast(({ fromMs }) => timeMs >= fromMs)?.shiftMs ?? 0;
  return {
    ...whole,
    alarms: evidence.alarms.laterBy((_, timeMs) => shiftAt(timeMs)),
    ...{ shiftMs: change.at(-1)!.shiftMs, isSure: true, byMachine: [], bySide: change },
  };
}

function sidesOf(evidence: Evidence, changeMs: number): SideShift[] | null {
  const { startMs } = evidence.alarms.columns;
  const before = provenShift({ ...evidence, alarms: evidence.alarms.where((place) => startMs[place]! < changeMs) });
  const after = provenShift({ ...evidence, alarms: evidence.alarms.where((place) => startMs[place]! >= changeMs) });
  if (Number.isNaN(before + after) || Math.abs(Math.abs(before - after) - CHANGE_MS) > TOLERANCE_MS) return null;
  return [
    { fromMs: -Infinity, shiftMs: before },
    { fromMs: changeMs, shiftMs: after },
  ];
}

/** NaN where the events of this side do not prove it. */
function provenShift(evidence: Evidence): number {
  const { isSure, shiftMs, matchedCount, eventCount } = correctAlarmClock(evidence);
  return isSure && matchedCount >= FEWEST_MATCHES && matchedCount >= SMALLEST_SHARE * eventCount ? shiftMs : NaN;
}
