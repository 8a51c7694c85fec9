import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { quantile } from '../maths/quantile.js';
import type { Machine } from './machine-minutes.js';

/** A zone this far below where it belongs is too cold, whatever the others do (common practice: usual alarm bands). */
const COLD_DEG_C = 3;
/** Another zone is down with it when it has fallen by at least this share of the zone's own fall (own choice). */
const SHARE_OF_FALL = 0.4;
/** Where no set point is logged, a zone belongs at the level that it holds or exceeds this share of the time it is hot. */
const USUAL_LEVEL = 0.75;

/** Says for each minute whether a cold zone is cold alone. */
export type ColdAlone = (zone: number, place: number) => boolean;

/**
 * Whether a zone is too cold alone or together with its machine: at a start, after a power cut, at a wash-down or while
 * the heats are off all zones are cold, and that is no fault of the one whose alarm comes first.
 *
 * @returns A function of zone index and place of the digest: false when at least half of the machine's other zones with
 *   a reading are cold with it. A zone without a reading, or without others to compare, counts as alone. Never throws.
 */
export function coldAloneOn({ zones }: Machine, digest: PlantDigest): ColdAlone {
  const belongs = new Map(zones.map(({ index }) => [index, usualLevelDegC(digest.zones[index]!)]));
  const belowDegC = (zone: number, place: number): number => {
    const { meanDegC, setpointDegC } = digest.zones[zone]!;
    const target = setpointDegC[place]! > 0 ? setpointDegC[place]! : belongs.get(zone)!;
    return target - meanDegC[place]!;
  };
  return (zone, place) => {
    const own = belowDegC(zone, place);
    if (Number.isNaN(own)) return true;
    const least = Math.max(COLD_DEG_C, SHARE_OF_FALL * own);
    const others = zones.map(({ index }) => (index === zone ? NaN : belowDegC(index, place)));
    const told = others.filter((below) => !Number.isNaN(below));
    const cold = told.filter((below) => below >= least).length;
    return told.length === 0 || cold * 2 < told.length;
  };
}

function usualLevelDegC({ meanDegC }: ZoneDigest): number {
  const cold = quantile(meanDegC, 0.02);
  const hot = quantile(meanDegC, 0.95);
  return quantile(
    meanDegC.filter((value) => value > (cold + hot) / 2),
    USUAL_LEVEL,
  );
}
