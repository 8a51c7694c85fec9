import { lastingStep } from '../detect/judges/lasting-step.js';
import { returningSteps } from '../detect/judges/returning-steps.js';
import { spikes } from '../detect/judges/spikes.js';
import { ownSpikesOf } from '../detect/shared/moves/own-spikes.js';
import { ownStepsOf } from '../detect/shared/moves/own-steps.js';
import { opensOf, type Open } from '../detect/shared/opens/opens.js';
import type { Evidence } from '../model/detector.js';
import type { AlarmMark, FaultMark, ZoneFinding } from '../model/findings.js';
import type { Zone } from '../model/zone.js';
import { calendarOf } from '../maths/calendar.js';
import { isoOrNull } from './iso.js';

/** More marks than this on one chart cannot be told apart; symptoms and alarm counts hold them all. */
const MOST_MARKS = 500;

/**
 * Single faults for the zone's chart, in time order; the last ones when there are too many. Jumps and steps are marked only
 * where a sign was made of them: a healthy zone has many, from product and doors.
 */
export function faultMarks(evidence: Evidence, zone: Zone, signs: ReadonlySet<string>): FaultMark[] {
  const opens = opensOf(evidence)[zone.index]!.map(({ startMs, endMs, kind }) => ({
    startMs,
    endMs,
    kind: String(kind),
  }));
  const hasSteps = signs.has(returningSteps.meta.id) || signs.has(lastingStep.meta.id);
  const steps = hasSteps ? ownStepsOf(evidence, zone, returningSteps.meta.defaults) : [];
  const jumps = signs.has(spikes.meta.id) ? ownSpikesOf(evidence, zone, spikes.meta.defaults.timesNoise).own : [];
  return [...opens, ...steps, ...jumps]
    .sort((a, b) => a.startMs - b.startMs)
    .slice(-MOST_MARKS)
    .map(({ startMs, endMs, kind }) => ({
      start: new Date(startMs).toISOString(),
      end: new Date(endMs).toISOString(),
      kind,
    }));
}

/** Alarms that stood in the time of the log; a list may reach years further. */
export function alarmMarks({ alarms, digest }: Evidence, zone: number): AlarmMark[] {
  const logEndMs = digest.startMs + digest.length * digest.periodMs;
  const own = alarms.about((subject) => subject.zone === zone);
  const { startMs, endMs } = own.columns;
  const standing = own.where((i) => startMs[i]! < logEndMs && !(endMs[i]! < digest.startMs));
  const first = Math.max(0, standing.length - MOST_MARKS);
  return [...standing.where((i) => i >= first)].map(({ startMs, endMs, message }) => ({
    start: new Date(startMs).toISOString(),
    end: isoOrNull(endMs),
    message,
  }));
}

/** Opens of each day of the plant's clock that has one, by whether the machine ran; unknown counts as running. */
export function opensByDay(opens: readonly Open[], timezone: string): ZoneFinding['opensByDay'] {
  const dayAt = calendarOf(timezone, 'day');
  const days = new Map<string, { running: number; stopped: number }>();
  for (const { startMs, runningShare } of opens) {
    const day = dayAt(startMs).name;
    const counts = days.get(day) ?? { running: 0, stopped: 0 };
    if (runningShare < 0.5) counts.stopped++;
    else counts.running++;
    days.set(day, counts);
  }
  return [...days].map(([day, counts]) => ({ day, ...counts }));
}
