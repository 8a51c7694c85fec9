import type { Evidence } from '../../../model/detector.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { changeInMean } from '../../../maths/change-in-mean.js';
import { median } from '../../../maths/quantile.js';
import { matesOf } from '../basics/mates.js';

/** Events of two zones this near in time are one and the same start or stop. */
const SAME_EVENT_MS = 90 * MINUTE_MS;

/** One measured event of a zone, a positive number. */
export interface MeasuredEvent {
  readonly timeMs: number;
  readonly value: number;
}

/** A zone's events on both sides of the time where they changed most, against its peers at the same events. */
export interface EventChange {
  readonly onsetMs: number;
  /** After ÷ before. */
  readonly ratio: number;
  readonly before: number;
  readonly after: number;
  readonly beforeCount: number;
  readonly afterCount: number;
  /** Bayes information criterion of no change less that of a change. */
  readonly bicGain: number;
  readonly peerCount: number;
}

/**
 * Finds the change of a zone's heat-ups or cool-downs that its peers do not share. Works on logarithms: a third less
 * heater power makes any heat-up slower by the same ratio.
 *
 * @returns null for fewer than `leastEvents` events on either side. Never throws.
 */
export function eventChange(
  evidence: Evidence,
  index: number,
  eventsByZone: readonly (readonly MeasuredEvent[])[],
  leastEvents: number,
): EventChange | null {
  const own = eventsByZone[index]!.filter(({ value }) => value > 0);
  const peers = matesOf(evidence.zones, evidence.zones[index]!).map((mate) => mate.index);
  const usual = eventsByZone.map((events) => median(events.map(({ value }) => Math.log(value))));
  const logs = own.map(({ timeMs, value }) => Math.log(value) - shared(eventsByZone, usual, peers, timeMs));
  const change = changeInMean(logs, { leastLength: leastEvents });
  if (change.index < 0) return null;
  const before = median(own.slice(0, change.index).map(({ value }) => value));
  const after = median(own.slice(change.index).map(({ value }) => value));
  return {
    onsetMs: own[change.index]!.timeMs,
    ratio: Math.exp(change.meanAfter - change.meanBefore),
    before,
    after,
    beforeCount: change.index,
    afterCount: own.length - change.index,
    bicGain: change.bicGain,
    peerCount: peers.length,
  };
}

/** What the peers did at the same event, as a logarithm against their own usual; 0 where no two of them were there. */
function shared(
  eventsByZone: readonly (readonly MeasuredEvent[])[],
  usual: readonly number[],
  peers: readonly number[],
  timeMs: number,
): number {
  const there = peers.flatMap((peer) => {
    const same = eventsByZone[peer]!.find((event) => Math.abs(event.timeMs - timeMs) <= SAME_EVENT_MS);
    return same && same.value > 0 ? [Math.log(same.value) - usual[peer]!] : [];
  });
  return there.length >= 2 ? median(there) : 0;
}
