import type { Episode, Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { oncePer } from '../basics/memo.js';
import { hasNear, momentMsOf } from '../opens/opens.js';
import { noiseDegCOf } from '../readings/noise.js';

interface Spikes {
  /** In time order: none of another zone at the same moment. */
  readonly own: readonly Episode[];
  /** Those that other zones have, too. */
  readonly sharedCount: number;
}

/** Jumps out and back of one zone that stand out of its noise by so many SDs, its own apart from those of several zones. */
export function ownSpikesOf(evidence: Evidence, zone: Zone, timesNoise: number): Spikes {
  const spikes = evidence.episodes.get('spike') ?? [];
  const smallestDegC = timesNoise * noiseDegCOf(evidence, zone);
  const large = (spikes[zone.index] ?? []).filter((spike) => Math.abs(spike.facts['sizeDegC']!) >= smallestDegC);
  const own = large.filter((spike) => !isShared(spikes, zone, spike));
  return { own, sharedCount: large.length - own.length };
}

function isShared(spikes: readonly (readonly Episode[])[], zone: Zone, { startMs }: Episode): boolean {
  const momentMs = momentMsOf(zone);
  return spikes.some((others, z) => z !== zone.index && hasNear(startsOf(others), startMs, momentMs));
}

const startsOf = oncePer((episodes: readonly Episode[]): readonly number[] => episodes.map(({ startMs }) => startMs));
