import type { Evidence } from '../../../model/detector.js';
import { maskOf } from './mask.js';
import { oncePer } from '../basics/memo.js';

/** A loss this long, or longer, may have ended with a new sensor (own choice: nobody swaps one faster). */
const LEAST_LOSS_MS = 20 * 60_000;
/** More lives than this are not told apart; the longest losses count (own choice). */
const MOST_BOUNDARIES = 4;

/**
 * Times at which a zone may have got another sensor: the ends of its long losses and the replacements of the
 * maintenance list. A new sensor has a small offset of its own, which is no fault.
 *
 * @returns UTC ms per zone, ascending. Never throws.
 */
export const livesOf = oncePer((evidence: Evidence): readonly (readonly number[])[] =>
  evidence.zones.map(({ index }) => {
    const listed = evidence.maintenance
      .filter((entry) => entry.zone === index && entry.isReplacement)
      .map((entry) => entry.timeMs);
    return [...new Set([...lossEnds(evidence, index), ...listed])].sort((a, b) => a - b);
  }),
);

function lossEnds(evidence: Evidence, index: number): number[] {
  const { digest } = evidence;
  const { badCount } = digest.zones[index]!;
  const mask = maskOf(evidence)[index]!;
  const losses: { endMs: number; places: number }[] = [];
  for (let from = 0; from < mask.length;) {
    let to = from + 1;
    while (to < mask.length && mask[to] === mask[from]) to++;
    const isLoss = mask[from] === 1 && badCount.subarray(from, to).some((count) => count > 0);
    if (isLoss && to < mask.length && (to - from) * digest.periodMs >= LEAST_LOSS_MS) {
      losses.push({ endMs: digest.startMs + to * digest.periodMs, places: to - from });
    }
    from = to;
  }
  return losses
    .sort((a, b) => b.places - a.places)
    .slice(0, MOST_BOUNDARIES)
    .map(({ endMs }) => endMs);
}
