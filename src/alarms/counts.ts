import type { AlarmSpan } from '../model/alarm.js';
import type { AlarmCount } from '../model/alarm-findings.js';
import { mergeIntervals, totalLength } from '../maths/intervals.js';

const MS_PER_MINUTE = 60_000;

/** One alarm is one source with one message. */
export function alarmName({ source, message }: AlarmSpan): string {
  if (source === '' || source === message) return message;
  return message === '' ? source : `${source}: ${message}`;
}

/** Alarms by a key; those whose key is null are left out. */
export function groupBy(
  alarms: readonly AlarmSpan[],
  keyOf: (alarm: AlarmSpan) => string | null,
): Map<string, AlarmSpan[]> {
  const groups = new Map<string, AlarmSpan[]>();
  for (const alarm of alarms) {
    const key = keyOf(alarm);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(alarm);
    else groups.set(key, [alarm]);
  }
  return groups;
}

/**
 * Count, share and time in alarm per group, most frequent first.
 *
 * @param total All activations, for the share.
 * @param endMs End of the log, where an alarm that still stands is counted to.
 */
export function countsOf(
  groups: ReadonlyMap<string, readonly AlarmSpan[]>,
  total: number,
  endMs: number,
): AlarmCount[] {
  const counts = [...groups].map(([name, alarms]) => countOf(name, alarms.length, alarms, total, endMs));
  return counts.sort((a, b) => b.count - a.count || a.name.localeCompare(b.name));
}

/** When an alarm was gone, or the end of the log for one that still stood then. */
export function endWithin({ startMs, endMs }: AlarmSpan, logEndMs: number): number {
  return Math.max(startMs, endMs < logEndMs ? endMs : logEndMs);
}

export function countOf(
  name: string,
  count: number,
  alarms: readonly AlarmSpan[],
  total: number,
  endMs: number,
): AlarmCount {
  const spans = alarms.map((alarm) => ({ start: alarm.startMs, end: endWithin(alarm, endMs) }));
  return {
    name,
    count,
    share: total === 0 ? 0 : count / total,
    minutesInAlarm: totalLength(mergeIntervals(spans)) / MS_PER_MINUTE,
  };
}
