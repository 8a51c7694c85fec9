import type { Zone } from '../../../model/zone.js';

/** The other zones of a zone's machine, by zone index. */
export function matesOf(zones: readonly Zone[], { machine, index }: Pick<Zone, 'machine' | 'index'>): readonly Zone[] {
  return zones.filter((other) => other.machine === machine && other.index !== index);
}
