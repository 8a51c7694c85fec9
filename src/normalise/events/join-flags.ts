import type { AlarmKind, AlarmSubject } from '../../model/alarm.js';
import { AlarmList } from '../../model/alarm-list.js';
import type { Zone } from '../../model/zone.js';

/** Between an alarm's row in a list and its flag in a row of readings, beside the step of these (common practice). */
const slackMs = 10_000;

/**
 * Puts the alarms of flags beside those of alarm lists. A flag that rises while a list has an alarm of the same zone and
 * class standing, or beginning, is that alarm and does not count again; nor does a flag that says no more than "alarm"
 * beside one of the same zone that says which.
 *
 * @param listed By start, its clock corrected.
 * @param flagged By start.
 * @returns All by start. Never throws. Cost n·log n.
 */
export function joinFlagAlarms(listed: AlarmList, flagged: AlarmList, zones: readonly Zone[]): AlarmList {
  if (flagged.length === 0) return listed;
  const telling = flagged.about(({ kind }) => kind !== 'other');
  const vague = flagged.about(({ kind }) => kind === 'other');
  const withTelling = together(listed, newTo(listed, telling, zones));
  return together(withTelling, newTo(withTelling, vague, zones));
}

/** Alarms of flags that no known alarm is. */
function newTo(known: AlarmList, flagged: AlarmList, zones: readonly Zone[]): AlarmList {
  const untilMs = new Map<string, number>();
  let next = 0;
  return flagged.where((place) => {
    const { zone, kind, startMs } = flagged.at(place);
    for (; next < known.length && known.columns.startMs[next]! <= startMs + slackMs; next++) {
      const { zone: ofZone, kind: ofKind, startMs: fromMs, endMs } = known.at(next);
      // Of an alarm that nothing ends it is not known how long it stood.
      const lastMs = Number.isNaN(endMs) ? fromMs : endMs;
      for (const key of new Set([`${ofZone} ${classOf(ofKind)}`, `${ofZone} other`]))
        untilMs.set(key, Math.max(lastMs, untilMs.get(key) ?? -Infinity));
    }
    const stepMs = zones[zone!]!.samplingMs || 0;
    return !((untilMs.get(`${zone} ${classOf(kind)}`) ?? -Infinity) >= startMs - stepMs - slackMs);
  });
}

/** An open input is a fault of the sensor for one log and its break for another. */
function classOf(kind: AlarmKind): string {
  return kind === 'sensor-open' || kind === 'sensor-fault' ? 'sensor' : kind;
}

function together(a: AlarmList, b: AlarmList): AlarmList {
  if (b.length === 0) return a;
  const subjects: AlarmSubject[] = [...a.subjects, ...b.subjects];
  const joined = <T extends 'startMs' | 'endMs' | 'acknowledgedMs'>(column: T): Float64Array =>
    Float64Array.from([...a.columns[column], ...b.columns[column]]);
  const subject = Uint32Array.from([...a.columns.subject, ...b.columns.subject.map((it) => it + a.subjects.length)]);
  const columns = {
    ...{ startMs: joined('startMs'), endMs: joined('endMs'), acknowledgedMs: joined('acknowledgedMs') },
    subject,
  };
  return new AlarmList(subjects, columns).laterBy(() => 0); // puts them in order
}
