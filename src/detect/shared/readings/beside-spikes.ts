import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { samplingMsOf } from '../basics/sampling.js';

/**
 * Tells stretches of a zone that a spike leads to or follows: the jump at their end is the spike's way back or out, not
 * their own. Never throws.
 */
export function besideSpikes(evidence: Evidence, zone: Zone): (stretch: Pick<Episode, 'startMs' | 'endMs'>) => boolean {
  const spikes = evidence.episodes.get('spike')?.[zone.index] ?? [];
  const reachMs = 1.5 * samplingMsOf(zone);
  const follows = (laterMs: number, earlierMs: number) => laterMs > earlierMs && laterMs - earlierMs <= reachMs;
  return ({ startMs, endMs }) => spikes.some((spike) => follows(startMs, spike.endMs) || follows(spike.startMs, endMs));
}
