import type { PlantDigest, ZoneDigest } from '../../src/model/digest.js';
import { emptyZoneDigest, mergePlace } from '../../src/digest/zone-digest.js';

/**
 * The digest of both logs together: on the coarser of the two periods, from the earlier start to the later end.
 * Where both hold samples of one minute, `a` counts as the earlier part of it.
 *
 * @param a, b Over the same list of zones; zones that one of them lacks are taken from the other.
 * @returns A new digest; the inputs stay. Exact up to the 32-bit numbers of the columns. Never throws for periods
 *   that divide each other, as those of `startDigest` do; throws RangeError for others.
 */
export function mergeDigests(a: PlantDigest, b: PlantDigest): PlantDigest {
  if (a.length === 0) return b;
  if (b.length === 0) return a;
  const periodMs = Math.max(a.periodMs, b.periodMs);
  if (periodMs % a.periodMs !== 0 || periodMs % b.periodMs !== 0) {
    throw new RangeError(`Digest periods of ${a.periodMs} and ${b.periodMs} ms do not divide each other.`);
  }
  const first = Math.floor(Math.min(a.startMs, b.startMs) / periodMs);
  const end = Math.ceil(Math.max(endMs(a), endMs(b)) / periodMs);
  const zones = Array.from({ length: Math.max(a.zones.length, b.zones.length) }, (_, zone) => {
    const into = emptyZoneDigest(end - first);
    for (const digest of [a, b]) {
      const from = digest.zones[zone];
      if (from) takeIn(into, first, periodMs, from, digest);
    }
    return into;
  });
  return { startMs: first * periodMs, periodMs, length: end - first, zones };
}

/**
 * The same digest on a period `factor` times as long, for keeping old data.
 *
 * @param factor Whole number, 1 or more; RangeError otherwise.
 */
export function coarsenDigest(digest: PlantDigest, factor: number): PlantDigest {
  if (!Number.isInteger(factor) || factor < 1) throw new RangeError(`Digest factor ${factor} is not a whole number.`);
  const periodMs = digest.periodMs * factor;
  const first = Math.floor(digest.startMs / periodMs);
  const length = digest.length === 0 ? 0 : Math.ceil(endMs(digest) / periodMs) - first;
  const zones = digest.zones.map((from) => {
    const into = emptyZoneDigest(length);
    takeIn(into, first, periodMs, from, digest);
    return into;
  });
  return { startMs: first * periodMs, periodMs, length, zones };
}

function endMs(digest: PlantDigest): number {
  return digest.startMs + digest.length * digest.periodMs;
}

function takeIn(into: ZoneDigest, first: number, periodMs: number, from: ZoneDigest, grid: PlantDigest): void {
  for (let i = 0; i < grid.length; i++) {
    mergePlace(into, Math.floor((grid.startMs + i * grid.periodMs) / periodMs) - first, from, i);
  }
}
