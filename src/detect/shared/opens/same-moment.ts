import type { Evidence } from '../../../model/detector.js';
import { momentMsOf, opensOf } from './opens.js';
import { oncePer } from '../basics/memo.js';
import { ownJumpsOf } from '../readings/own-jumps.js';

/** Zones that lost their reading, or jumped impossibly, within one moment. */
export interface Moment {
  readonly startMs: number;
  /** Zone indexes, ascending, each once. */
  readonly zones: readonly number[];
}

interface Event {
  readonly timeMs: number;
  readonly zone: number;
}

/** All events of all zones gathered into moments, in time order. A zone that repeats within a moment counts once. */
export const failureMomentsOf = oncePer((evidence: Evidence): readonly Moment[] => {
  const events = evidence.zones
    .flatMap((zone) => eventsOf(evidence, zone.index))
    .sort((a, b) => a.timeMs - b.timeMs || a.zone - b.zone);
  const withinMs = Math.max(0, ...evidence.zones.map(momentMsOf));
  const moments: Moment[] = [];
  for (let from = 0; from < events.length;) {
    let to = from;
    const startMs = events[from]!.timeMs;
    while (to < events.length && events[to]!.timeMs - startMs <= withinMs) to++;
    const zones = [...new Set(events.slice(from, to).map((event) => event.zone))].sort((a, b) => a - b);
    moments.push({ startMs, zones });
    from = to;
  }
  return moments;
});

function eventsOf(evidence: Evidence, zone: number): Event[] {
  const opens = opensOf(evidence)[zone]!.map((open) => open.startMs);
  const jumps = ownJumpsOf(evidence)[zone]!.map((jump) => jump.endMs);
  return [...opens, ...jumps].map((timeMs) => ({ timeMs, zone }));
}
