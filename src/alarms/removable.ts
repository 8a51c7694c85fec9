import type { AlarmKind } from '../model/alarm.js';
import type { AlarmFindings } from '../model/alarm-findings.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { Zone } from '../model/zone.js';
import { MINUTE_MS } from '../model/time-units.js';
import { mergeByStart, type Interval } from '../maths/intervals.js';

/** A zone judged to have a fault, and when; NaN = not told, then the fault is taken to last. */
export interface FaultyZone {
  readonly zone: number;
  readonly fromMs: number;
  readonly toMs: number;
}

/** Whatever cools or heats a whole machine shows on its other zones within this (common practice). */
const OTHERS_FOLLOW_MS = 5 * MINUTE_MS;

const inputKinds: ReadonlySet<AlarmKind> = new Set(['sensor-open', 'sensor-fault']);
const coldKinds: ReadonlySet<AlarmKind> = new Set(['temperature-low', 'deviation-low']);
const hotKinds: ReadonlySet<AlarmKind> = new Set(['temperature-high', 'deviation-high']);

/**
 * What repairing zones one after the other removes, the most talkative first. Counted are the alarms that the fault
 * explains: those of the zone while its fault stands, and its input alarms at any time. A zone too cold or too hot
 * together with at least half of its machine's other zones would alarm with a good sensor, too: a start, a wash-down.
 *
 * @param alarms By start. @param faulty No zone twice.
 */
export function removableBy(
  alarms: AlarmList,
  zones: readonly Zone[],
  faulty: readonly FaultyZone[],
): AlarmFindings['removable'] {
  if (faulty.length === 0) return [];
  const sides = [coldKinds, hotKinds].map((kinds) => ({
    kinds,
    spansOf: zones.map(({ index }) => spansAround(alarms, index, kinds)),
  }));
  const countsByZone = faulty.flatMap((fault) => {
    const zone = zones[fault.zone];
    const count = zone ? explainedCount(alarms, sides, othersOf(zones, zone), fault) : 0;
    return zone && count > 0 ? [{ zone: zone.name, machine: zone.machine, count }] : [];
  });
  let removed = 0;
  return countsByZone
    .sort((a, b) => b.count - a.count)
    .map((row) => {
      removed += row.count;
      return { ...row, cumulativeShare: removed / alarms.length };
    });
}

/** The alarms of one side, too cold or too hot. */
interface Side {
  readonly kinds: ReadonlySet<AlarmKind>;
  /** By zone index: when others may follow an alarm of the zone. */
  readonly spansOf: readonly (readonly Interval[])[];
}

function othersOf(zones: readonly Zone[], { index, machine }: Zone): number[] {
  return zones.filter((zone) => zone.machine === machine && zone.index !== index).map((zone) => zone.index);
}

function explainedCount(
  alarms: AlarmList,
  sides: readonly Side[],
  others: readonly number[],
  { zone, fromMs, toMs }: FaultyZone,
): number {
  const own = (isWanted: (kind: AlarmKind) => boolean) =>
    alarms.about((alarm) => alarm.zone === zone && isWanted(alarm.kind));
  const ofInput = own((kind) => inputKinds.has(kind)).length;
  const isInFault = (timeMs: number) => !(timeMs < fromMs - OTHERS_FOLLOW_MS || timeMs > toMs);
  const onSides = sides.map(({ kinds, spansOf }) => {
    const isWithOthers = withOthers(others.map((other) => spansOf[other]!));
    return own((kind) => kinds.has(kind)).columns.startMs.filter(
      (timeMs) => !isWithOthers(timeMs) && isInFault(timeMs),
    );
  });
  const further = own((kind) => ![inputKinds, coldKinds, hotKinds].some((kinds) => kinds.has(kind)));
  const rest = further.columns.startMs.filter(isInFault);
  return [...onSides, rest].reduce((sum, { length }) => sum + length, ofInput);
}

/** When an alarm of these kinds stood on a zone, or would soon or had just begun. */
function spansAround(alarms: AlarmList, zoneIndex: number, kinds: ReadonlySet<AlarmKind>): Interval[] {
  const { startMs, endMs } = alarms.about(({ zone, kind }) => zone === zoneIndex && kinds.has(kind)).columns;
  const spans = Array.from(startMs, (start, i) => {
    const lastMs = Number.isNaN(endMs[i]!) ? Infinity : endMs[i]!;
    return { start: start - OTHERS_FOLLOW_MS, end: Math.max(start + OTHERS_FOLLOW_MS, lastMs) };
  });
  return mergeByStart(spans);
}

/** Says for rising times whether at least half of some zones have an alarm about then. */
function withOthers(spansOfOthers: readonly (readonly Interval[])[]): (timeMs: number) => boolean {
  const walkers = spansOfOthers.map(walker);
  return (timeMs) => walkers.length > 0 && walkers.filter((holds) => holds(timeMs)).length * 2 >= walkers.length;
}

/** Whether a time lies in one of some spans; times must not fall from call to call. */
function walker(spans: readonly Interval[]): (timeMs: number) => boolean {
  let at = 0;
  return (timeMs) => {
    while (at < spans.length && spans[at]!.end < timeMs) at++;
    return at < spans.length && spans[at]!.start <= timeMs;
  };
}
