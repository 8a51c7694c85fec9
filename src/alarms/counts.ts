import type { AlarmSpan, AlarmSubject } from '../model/alarm.js';
import type { AlarmCount } from '../model/alarm-findings.js';
import type { AlarmList } from '../model/alarm-list.js';
import { MINUTE_MS } from '../model/time-units.js';
import { coveredLength } from '../maths/intervals.js';

/** One alarm is one source with one message. */
export function alarmName({ source, message }: AlarmSubject): string {
  if (source === '' || source === message) return message;
  return message === '' ? source : `${source}: ${message}`;
}

/** Alarms by what they are about; those whose key is null are left out. */
export function groupBy(alarms: AlarmList, keyOf: (subject: AlarmSubject) => string | null): Map<string, AlarmList> {
  const keys = alarms.subjects.map(keyOf);
  return alarms.groupBy((place) => keys[alarms.columns.subject[place]!]!);
}

/** Alarms by when they start. */
export function groupByStart(alarms: AlarmList, keyOf: (startMs: number) => string): Map<string, AlarmList> {
  return alarms.groupBy((place) => keyOf(alarms.columns.startMs[place]!));
}

/**
 * Count, share and time in alarm per group, most frequent first.
 *
 * @param total All activations, for the share.
 * @param endMs End of the log, where an alarm that still stands is counted to.
 */
export function countsOf(groups: ReadonlyMap<string, AlarmList>, total: number, endMs: number): AlarmCount[] {
  const counts = [...groups].map(([name, alarms]) => countOf(name, alarms.length, alarms, total, endMs));
  return counts.sort((a, b) => b.count - a.count || a.name.localeCompare(b.name));
}

export type AlarmTimes = Pick<AlarmSpan, 'startMs' | 'endMs'>;

/** When an alarm was gone, or the end of the log for one that still stood then. */
export function endWithin({ startMs, endMs }: AlarmTimes, logEndMs: number): number {
  return Math.max(startMs, endMs < logEndMs ? endMs : logEndMs);
}

/**
 * One row of a table of alarms.
 *
 * @param count How many of `alarms` count; chatter counts some of them only. `total` and `endMs` as for `countsOf`.
 */
export function countOf(name: string, count: number, alarms: AlarmList, total: number, endMs: number): AlarmCount {
  const { startMs, endMs: goneMs } = alarms.columns;
  const endAt = (place: number) => endWithin({ startMs: startMs[place]!, endMs: goneMs[place]! }, endMs);
  return {
    name,
    count,
    share: total === 0 ? 0 : count / total,
    minutesInAlarm: coveredLength(startMs, endAt) / MINUTE_MS,
  };
}
