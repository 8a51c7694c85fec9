import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';

/** How many zones of a machine are in a state, place by place of the digest. */
export interface MachineCount {
  zoneCount: number;
  readonly countAt: Uint32Array;
}

/**
 * Counts the zones of each machine that are in a state: once, not by each zone over all others.
 *
 * @param placesOf One number a place of the digest: 1 where a zone is in the state, else 0.
 * @returns By name of the machine; has every machine of the evidence. Never throws.
 */
export function countByMachine(
  { zones, digest }: Evidence,
  placesOf: (zone: Zone) => Uint8Array,
): ReadonlyMap<string, MachineCount> {
  const counts = new Map<string, MachineCount>();
  for (const zone of zones) {
    const count = counts.get(zone.machine) ?? { zoneCount: 0, countAt: new Uint32Array(digest.length) };
    counts.set(zone.machine, count);
    count.zoneCount++;
    const places = placesOf(zone);
    for (let i = 0; i < places.length; i++) count.countAt[i]! += places[i]!;
  }
  return counts;
}
