import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { DAY_MS } from '../../../model/time-units.js';
import { binomialTest } from '../../../maths/binomial.js';
import { windowOf } from '../basics/judge-zones.js';
import { oncePer } from '../basics/memo.js';
import { momentMsOf } from './opens.js';
import { failureMomentsOf, type Moment } from './same-moment.js';

/** At least this long is looked at, so that one burst is no time of its own (own choice). */
const LEAST_SPAN_MS = DAY_MS;

/** How often a zone fails in the same moment as others, and how likely chance alone would have it so. */
export interface SharedFailures {
  readonly own: readonly Moment[];
  /** Those of `own` in which other zones fail, too. */
  readonly shared: readonly Moment[];
  /** Moments that would meet another zone's by chance. */
  readonly expectedCount: number;
  /** Chance of so many shared ones, or more, were the zones independent; NaN without a moment. */
  readonly chancePValue: number;
}

/** Failures that each zone shares with others, by zone index. Never throws. */
export const sharedFailuresOf = oncePer((evidence: Evidence): readonly SharedFailures[] =>
  evidence.zones.map((zone) => {
    const own = failureMomentsOf(evidence).filter((moment) => moment.zones.includes(zone.index));
    const shared = own.filter((moment) => moment.zones.length > 1);
    if (own.length === 0) return { own, shared, expectedCount: 0, chancePValue: NaN };
    const chance = chanceOfMeeting(evidence, zone, own);
    const { atLeast } = binomialTest(shared.length, own.length, Math.min(0.999, Math.max(1e-9, chance)));
    return { own, shared, expectedCount: chance * own.length, chancePValue: atLeast };
  }),
);

/**
 * Chance that a moment of this zone meets an independent one of another zone, by how often those come in the time in
 * which this zone's lie: two zones that each fail on the same hot days meet more often than the whole log lets expect.
 */
function chanceOfMeeting(evidence: Evidence, zone: Zone, own: readonly Moment[]): number {
  const { startMs, endMs } = windowOf(evidence);
  const missingMs = Math.max(0, LEAST_SPAN_MS - (own.at(-1)!.startMs - own[0]!.startMs));
  const fromMs = Math.max(startMs, own[0]!.startMs - missingMs / 2);
  const toMs = Math.min(endMs, own.at(-1)!.startMs + missingMs / 2);
  const others = failureMomentsOf(evidence).filter(
    (moment) => moment.startMs >= fromMs && moment.startMs <= toMs && moment.zones.some((z) => z !== zone.index),
  ).length;
  return 1 - Math.exp((-others * 2 * momentMsOf(zone)) / (toMs - fromMs));
}
