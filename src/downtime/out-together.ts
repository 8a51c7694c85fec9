import type { PlantDigest } from '../model/digest.js';
import { deviationOn } from './band.js';
import type { Machine } from './machine-minutes.js';

/** A zone this far from where it belongs is out of its band (common practice: usual alarm bands). */
const OUT_DEG_C = 3;
/** Another zone is out with it when it has gone the same way by at least this share of the zone's own way (own choice). */
const SHARE_OF_WAY = 0.4;

/** 1 = too hot, −1 = too cold. */
export type Side = 1 | -1;
/** Says for each minute whether a zone that is out of its band on one side is out alone. */
export type OutAlone = (zone: number, place: number, side: Side) => boolean;

/**
 * Whether a zone is too cold alone or together with its machine: at a start, after a power cut, at a wash-down or while
 * the heats are off all zones are cold, and that is no fault of the one whose alarm comes first. Too hot likewise: when
 * the load goes, all zones rise.
 *
 * @returns A function of zone index and place of the digest: false when at least half of the machine's other zones with
 *   a reading are out with it. A zone without a reading, or without others to compare, counts as alone. Never throws.
 */
export function outAloneOn(machine: Machine, digest: PlantDigest): OutAlone {
  const deviation = deviationOn(machine, digest);
  return (zone, place, side) => {
    const own = side * deviation(zone, place);
    if (Number.isNaN(own)) return true;
    const least = Math.max(OUT_DEG_C, SHARE_OF_WAY * own);
    const others = machine.zones.map(({ index }) => (index === zone ? NaN : side * deviation(index, place)));
    const told = others.filter((away) => !Number.isNaN(away));
    return told.length === 0 || told.filter((away) => away >= least).length * 2 < told.length;
  };
}
