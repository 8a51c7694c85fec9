import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import type { Zone } from '../model/zone.js';

/** A state holds from one row to the next; rows come a little late now and then (common practice). */
const LATEST_ROW = 1.5;

/**
 * The digest of a log with fewer rows than minutes, each row held until the next one is due: else every second minute
 * would be a hole, in which nobody knows whether the heats are on or the machine runs. A row with a lost reading ends
 * what the reading was before.
 *
 * @returns Zones that are logged every minute or more often are as they were. Never throws.
 */
export function withHeldRows(digest: PlantDigest, zones: readonly Zone[]): PlantDigest {
  const held = digest.zones.map((zone, index) => {
    const samplingMs = zones[index]?.samplingMs ?? NaN;
    return samplingMs > digest.periodMs ? heldZone(zone, heldPlaces(samplingMs, digest.periodMs)) : zone;
  });
  return { ...digest, zones: held };
}

/** Empty places behind a row in which it still holds. */
export function heldPlaces(samplingMs: number, periodMs: number): number {
  const places = Math.ceil((LATEST_ROW * samplingMs) / periodMs) - 1;
  return Number.isNaN(places) ? 0 : places;
}

function heldZone(zone: ZoneDigest, places: number): ZoneDigest {
  const isLost = (place: number) => zone.badCount[place]! > 0;
  const reading = (column: Float32Array) => held(column, places, isLost);
  const state = (column: Float32Array) => held(column, places);
  return {
    ...zone,
    meanDegC: reading(zone.meanDegC),
    minDegC: reading(zone.minDegC),
    maxDegC: reading(zone.maxDegC),
    setpointDegC: state(zone.setpointDegC),
    outputPercent: state(zone.outputPercent),
    runningShare: state(zone.runningShare),
  };
}

/** Fills at most `places` empty places behind each value with it, up to one that is known to hold none. */
export function held(
  column: Float32Array,
  places: number,
  isNone: (place: number) => boolean = () => false,
): Float32Array {
  let from = -Infinity;
  return column.map((value, i) => {
    if (!Number.isNaN(value)) from = i;
    else if (isNone(i)) from = -Infinity;
    return i - from <= places ? column[from]! : NaN;
  });
}
