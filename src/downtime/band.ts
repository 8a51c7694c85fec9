import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { quantile } from '../maths/quantile.js';
import type { Machine } from './machine-minutes.js';

/**
 * Where no log says when the machine ran, a zone belongs at the level that it holds or exceeds this share of the time
 * it is hot: standby levels lie below it, swings past the set point above (own choice).
 */
const USUAL_LEVEL = 0.75;
/** A loop in order stays this near to its set point (common practice for bars and barrels). */
const HELD_WITHIN_DEG_C = 1;
/** Fewer minutes of running, an hour of them, tell no level (own choice). */
const FEWEST_MINUTES = 60;

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

function usualLevelDegC({ meanDegC, runningShare, outputPercent }: ZoneDigest): number {
  const isRunning = (degC: number, place: number) => runningShare[place]! > 0 && !Number.isNaN(degC);
  // An output at its stop holds nothing: the heat is stuck on, or too weak.
  const isInCharge = (place: number) => !(outputPercent[place]! <= 0 || outputPercent[place]! >= 100);
  const held = meanDegC.filter((degC, place) => isRunning(degC, place) && isInCharge(place));
  if (held.length >= FEWEST_MINUTES) return heldDegC(held);
  const whileRunning = meanDegC.filter(isRunning);
  if (whileRunning.length >= FEWEST_MINUTES) return heldDegC(whileRunning);
  const cold = quantile(meanDegC, 0.02);
  const hot = quantile(meanDegC, 0.95);
  return quantile(
    meanDegC.filter((degC) => degC > (cold + hot) / 2),
    USUAL_LEVEL,
  );
}

/**
 * The level a reading dwells at: the middle of the narrow band that holds most of it. A loop in order sits at its set
 * point, while a zone whose heat is stuck on for days wanders and so cannot pass for its own set point.
 */
function heldDegC(readingsDegC: Float32Array): number {
  const sorted = readingsDegC.slice().sort();
  let best = 0;
  let most = 0;
  for (let from = 0, to = 0; from < sorted.length; from++) {
    while (to < sorted.length && sorted[to]! - sorted[from]! <= 2 * HELD_WITHIN_DEG_C) to++;
    if (to - from <= most) continue;
    most = to - from;
    best = from;
  }
  return sorted[best + (most >> 1)]!;
}
