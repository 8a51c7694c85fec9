import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { quantile } from '../maths/quantile.js';
import type { Machine } from './machine-minutes.js';

/** Where no set point is logged, a zone belongs at the level that it holds or exceeds this share of the time it is hot. */
const USUAL_LEVEL = 0.75;

/** Reading less the temperature at which the zone belongs, °C, by zone index and place of the digest; NaN = not told. */
export type Deviation = (zone: number, place: number) => number;

/** How far the zones of a machine are from their set point, or from their usual level where none is logged. Never throws. */
export function deviationOn({ zones }: Machine, digest: PlantDigest): Deviation {
  const belongsDegC = new Map(zones.map(({ index }) => [index, usualLevelDegC(digest.zones[index]!)]));
  return (zone, place) => {
    const { meanDegC, setpointDegC } = digest.zones[zone]!;
    const targetDegC = setpointDegC[place]! > 0 ? setpointDegC[place]! : belongsDegC.get(zone)!;
    return meanDegC[place]! - targetDegC;
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
