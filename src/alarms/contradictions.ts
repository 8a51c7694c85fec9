import type { AlarmSpan } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { AlarmFindings } from '../model/alarm-findings.js';
import type { Zone } from '../model/zone.js';
import { nearAny, type Interval } from '../maths/intervals.js';

/** Clocks and sampling differ by up to this much once the clock shift is taken out; common practice. */
const TOLERANCE_MS = 120_000;

/**
 * Alarms without any sign in the readings, and signs without an alarm.
 *
 * @param opensByZone By zone index: spans in which the readings show an open input or a code, ms, ascending.
 *   An alarm shorter than the sampling leaves no sign by itself and does not count.
 */
export function contradictionsOf(
  alarms: AlarmList,
  zones: readonly Zone[],
  opensByZone: readonly (readonly Interval[])[],
): AlarmFindings['contradictions'] {
  const input = alarms.about(({ kind }) => kind === 'sensor-open' || kind === 'sensor-fault');
  const isShared = ({ name }: Zone) => zones.filter((other) => other.name === name).length > 1;
  const named = (zone: Zone) => (isShared(zone) ? `${zone.name} on ${zone.machine}` : zone.name);
  return zones.flatMap((zone) => {
    const own = [...input.about((alarm) => alarm.zone === zone.index)];
    const opens = opensByZone[zone.index] ?? [];
    const seen = own.filter(({ startMs, endMs }) => !(endMs - startMs < 2 * zone.samplingMs));
    const isNearOpen = nearAny(opens, TOLERANCE_MS);
    const isNearAlarm = nearAny(own.map(spanOf), TOLERANCE_MS);
    const unseen = seen.map(spanOf).filter((alarm) => !isNearOpen(alarm)).length;
    const silent = own.length === 0 && input.length === 0 ? 0 : opens.filter((open) => !isNearAlarm(open)).length;
    const found: AlarmFindings['contradictions'][number][] = [];
    if (unseen > 0 && zone.has.reading) {
      found.push({
        zone: zone.name,
        machine: zone.machine,
        what: 'alarm-without-sign',
        count: unseen,
        says:
          unseen === 1
            ? `1 input alarm of ${named(zone)} has no sign in its readings.`
            : `${unseen} input alarms of ${named(zone)} have no sign in its readings.`,
      });
    }
    if (silent > 0) {
      found.push({
        zone: zone.name,
        machine: zone.machine,
        what: 'sign-without-alarm',
        count: silent,
        says: `The readings of ${named(zone)} show an open input ${silent === 1 ? 'once' : `${silent} times`} without an alarm.`,
      });
    }
    return found;
  });
}

/** An alarm that still stands has no end. */
function spanOf({ startMs, endMs }: AlarmSpan): Interval {
  return { start: startMs, end: Number.isNaN(endMs) ? Infinity : endMs };
}
