import type { ZoneDigest } from '../model/digest.js';

/** Bytes one place of a `ZoneDigest` takes: two counts of 2 bytes and nine numbers of 4. */
export const BYTES_PER_PLACE = 2 * 2 + 9 * 4;

/** Largest count a place can hold; more samples than that in one period are counted as this many. */
export const LARGEST_COUNT = 0xffff;

/** The columns that hold numbers, in the order in which they are stored. */
export const numberColumns = [
  'firstDegC',
  'lastDegC',
  'minDegC',
  'maxDegC',
  'meanDegC',
  'spreadDegC',
  'outputPercent',
  'setpointDegC',
  'runningShare',
] as const;

/** `length` places in which nothing was counted: counts 0, numbers NaN. */
export function emptyZoneDigest(length: number): ZoneDigest {
  const missing = () => new Float32Array(length).fill(NaN);
  return {
    readingCount: new Uint16Array(length),
    badCount: new Uint16Array(length),
    firstDegC: missing(),
    lastDegC: missing(),
    minDegC: missing(),
    maxDegC: missing(),
    meanDegC: missing(),
    spreadDegC: missing(),
    outputPercent: missing(),
    setpointDegC: missing(),
    runningShare: missing(),
  };
}

/** True when neither a reading nor a bad sample was counted in this place. */
export function isEmptyPlace(zone: ZoneDigest, i: number): boolean {
  return zone.readingCount[i] === 0 && zone.badCount[i] === 0;
}

/**
 * Takes place `from[j]` into place `into[i]`, as if one stream had held both. What is in `into` counts as the earlier
 * part: it gives `first`, the other gives `last`. Output, set point and running share are weighted by the samples of
 * either part, so they are exact where the log holds them throughout or not at all.
 */
export function mergePlace(into: ZoneDigest, i: number, from: ZoneDigest, j: number): void {
  const earlierCount = into.readingCount[i]! + into.badCount[i]!;
  const laterCount = from.readingCount[j]! + from.badCount[j]!;
  if (laterCount === 0) return;
  mergeMean(into.outputPercent, i, earlierCount, from.outputPercent[j]!, laterCount);
  mergeMean(into.setpointDegC, i, earlierCount, from.setpointDegC[j]!, laterCount);
  mergeMean(into.runningShare, i, earlierCount, from.runningShare[j]!, laterCount);
  into.badCount[i] = Math.min(LARGEST_COUNT, into.badCount[i]! + from.badCount[j]!);
  if (from.readingCount[j]! > 0) mergeReadings(into, i, from, j);
}

function mergeReadings(into: ZoneDigest, i: number, from: ZoneDigest, j: number): void {
  const a = into.readingCount[i]!;
  const b = from.readingCount[j]!;
  const apart = from.meanDegC[j]! - into.meanDegC[i]!;
  const count = a + b;
  into.readingCount[i] = Math.min(LARGEST_COUNT, count);
  into.lastDegC[i] = from.lastDegC[j]!;
  if (a === 0) {
    into.firstDegC[i] = from.firstDegC[j]!;
    into.minDegC[i] = from.minDegC[j]!;
    into.maxDegC[i] = from.maxDegC[j]!;
    into.meanDegC[i] = from.meanDegC[j]!;
    into.spreadDegC[i] = from.spreadDegC[j]!;
    return;
  }
  // Chan, Golub & LeVeque 1983, The American Statistician 37:242–247, in population form.
  const variance =
    (a * into.spreadDegC[i]! ** 2 + b * from.spreadDegC[j]! ** 2) / count + (a * b * apart ** 2) / count ** 2;
  into.meanDegC[i] = into.meanDegC[i]! + (apart * b) / count;
  into.spreadDegC[i] = Math.sqrt(variance);
  into.minDegC[i] = Math.min(into.minDegC[i]!, from.minDegC[j]!);
  into.maxDegC[i] = Math.max(into.maxDegC[i]!, from.maxDegC[j]!);
}

function mergeMean(column: Float32Array, i: number, earlierCount: number, later: number, laterCount: number): void {
  const earlier = column[i]!;
  if (Number.isNaN(later)) return;
  if (Number.isNaN(earlier) || earlierCount === 0) column[i] = later;
  else column[i] = earlier + ((later - earlier) * laterCount) / (earlierCount + laterCount);
}
