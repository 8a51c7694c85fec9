import type { MaintenanceEntry } from '../../../model/alarm.js';
import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { conditionAt, conditionsOf } from '../readings/exposure.js';
import { oncePer } from '../basics/memo.js';
import { openMinutes, opensOf, type Open } from './opens.js';

/** A moment from which on the zone is judged anew. */
export interface Repair {
  readonly timeMs: number;
  readonly from: 'log' | 'maintenance list';
  /** Time of its line in the maintenance list, which may be hours after the fault ended; NaN = it has none. */
  readonly listedMs: number;
  /** The maintenance list says that a part was replaced; in the log a replacement shows only as the end of the fault. */
  readonly isReplacement: boolean;
  /** What the maintenance list says was put right; null where it has no line or its words tell nothing. */
  readonly cause: MaintenanceEntry['cause'];
  /** Length of the fault that ended with it; 0 where the log shows none. */
  readonly faultMinutes: number;
  /** 1 = the machine stood when the fault ended, NaN = not known. */
  readonly stopped: number;
}

/** A part of the log between two repairs. */
export interface Life {
  readonly startMs: number;
  readonly endMs: number;
  readonly endedBy: Repair | null;
}

/** A fault that stood so long was not a loose contact coming back by itself, mostly (own choice). */
const LONG_FAULT_MINUTES = 20;
/** An open that comes back this soon after the end was not repaired (own choice). */
const QUIET_AFTER_HOURS = 4;
/** A line of the list and the end of a fault within this are the same repair: lists are written after the work. */
const SAME_REPAIR_HOURS = 12;
/** Nobody changes a sensor on a machine that runs. */
const RUNS_FROM_SHARE = 0.9;

/** Repairs of every zone in time order, by zone index. */
export const repairsOf = oncePer((evidence: Evidence): readonly (readonly Repair[])[] =>
  evidence.zones.map((zone) => {
    const inLog = repairsInLog(evidence, zone);
    const matched = new Set<Repair>();
    const fromList = listedRepairs(evidence, zone).map((entry) => {
      const same = inLog.find((r) => Math.abs(r.timeMs - entry.timeMs) <= SAME_REPAIR_HOURS * HOUR_MS);
      if (!same) return entry;
      matched.add(same);
      return {
        ...same,
        from: entry.from,
        listedMs: entry.listedMs,
        isReplacement: entry.isReplacement,
        cause: entry.cause,
      };
    });
    const all = [...inLog.filter((r) => !matched.has(r)), ...fromList].sort((a, b) => a.timeMs - b.timeMs);
    return all.filter((repair, i) => i === 0 || repair.timeMs > all[i - 1]!.timeMs);
  }),
);

/** More new sensors than this are not told apart in one zone; the longest faults count (own choice). */
const MOST_NEW_SENSORS = 4;

/**
 * Times at which a zone may have got another sensor, by zone index, ascending: a listed replacement, or the end of a long
 * fault that the list does not explain otherwise. A new sensor has a small offset of its own, which is no fault.
 */
export const newSensorsMsOf = oncePer((evidence: Evidence): readonly (readonly number[])[] =>
  repairsOf(evidence).map((repairs) =>
    repairs
      .filter(({ from, isReplacement }) => isReplacement || from === 'log')
      .sort((a, b) => Number(b.isReplacement) - Number(a.isReplacement) || b.faultMinutes - a.faultMinutes)
      .slice(0, MOST_NEW_SENSORS)
      .map(({ timeMs }) => timeMs)
      .sort((a, b) => a - b),
  ),
);

/** The lives of every zone, one after the other without gaps, by zone index; one life where nothing was repaired. */
export const repairLivesOf = oncePer((evidence: Evidence): readonly (readonly Life[])[] => {
  const startMs = evidence.digest.startMs;
  const endMs = startMs + evidence.digest.length * evidence.digest.periodMs;
  return repairsOf(evidence).map((repairs) => {
    const within = repairs.filter((r) => r.timeMs > startMs && r.timeMs < endMs);
    const edges = [startMs, ...within.map((r) => r.timeMs), endMs];
    return edges.slice(1).map((end, i) => ({ startMs: edges[i]!, endMs: end, endedBy: within[i] ?? null }));
  });
});

/** The life that holds most opens, the later one of equals: the one a verdict on opens is about. */
export function mainLifeOf(evidence: Evidence, zone: Zone): Life {
  const opens = opensOf(evidence)[zone.index]!;
  const lives = repairLivesOf(evidence)[zone.index]!;
  return lives.reduce((best, life) => (opensIn(opens, life).length >= opensIn(opens, best).length ? life : best));
}

/** A fault of this length ends the count of opens: what comes after the contact has parted tells nothing of the way there. */
const STANDING_MINUTES = LONG_FAULT_MINUTES;

/** A life up to its first long or standing open. */
export function untilLong(life: Life, opens: readonly Open[]): Life {
  const long = opensIn(opens, life).find((open) => openMinutes(open) >= STANDING_MINUTES || open.isStanding);
  return long ? { ...life, endMs: long.startMs } : life;
}

/** Opens that come and go, and the time in which more of them could have come. */
export interface OpenSpan {
  /** The one that begins the span. */
  readonly first: Open;
  /** Those after it. */
  readonly opens: readonly Open[];
  readonly fromMs: number;
  readonly toMs: number;
}

/**
 * The time from the first open of the main life to its first long open, or its end: before the fault was there its
 * conditions tell nothing of it. The first open only marks the beginning, so it is not counted.
 *
 * @param own Opens of the zone alone, in time order. @returns null for fewer than two opens in that time.
 */
export function openSpanOf(evidence: Evidence, zone: Zone, own: readonly Open[]): OpenSpan | null {
  const life = untilLong(mainLifeOf(evidence, zone), own);
  const [first, ...opens] = opensIn(own, life);
  if (!first || opens.length === 0) return null;
  return { first, opens, fromMs: first.startMs, toMs: life.endMs };
}

export function opensIn(opens: readonly Open[], life: Life): readonly Open[] {
  return opens.filter((open) => open.startMs >= life.startMs && open.startMs < life.endMs);
}

function repairsInLog(evidence: Evidence, zone: Zone): Repair[] {
  const opens = opensOf(evidence)[zone.index]!;
  const { runningShare } = conditionsOf(evidence)[zone.index]!;
  return opens.flatMap((open, i): Repair[] => {
    if (open.isStanding || !open.isInLog || openMinutes(open) < LONG_FAULT_MINUTES) return [];
    if (open.othersAtOnceCount > 0) return []; // the whole card came back
    const next = opens[i + 1];
    if (next && next.startMs - open.endMs < QUIET_AFTER_HOURS * HOUR_MS) return [];
    const running = conditionAt(evidence, runningShare, open.endMs);
    if (running > RUNS_FROM_SHARE) return [];
    const stopped = Number.isNaN(running) ? NaN : 1;
    const faultMinutes = openMinutes(open);
    return [
      { timeMs: open.endMs, from: 'log', listedMs: NaN, isReplacement: false, cause: null, faultMinutes, stopped },
    ];
  });
}

function listedRepairs({ maintenance }: Evidence, zone: Zone): Repair[] {
  return maintenance
    .filter((entry) => entry.zone === zone.index && (entry.isReplacement || entry.cause !== null))
    .map((entry) => ({
      timeMs: entry.timeMs,
      from: 'maintenance list',
      listedMs: entry.timeMs,
      isReplacement: entry.isReplacement,
      cause: entry.cause,
      faultMinutes: 0,
      stopped: NaN,
    }));
}
