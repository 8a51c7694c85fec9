import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { readingState, type SampleBlock } from '../model/sample-block.js';
import type { Zone } from '../model/zone.js';
import {
  BYTES_PER_PLACE,
  copyPlaces,
  emptyZoneDigest,
  isEmptyPlace,
  LARGEST_COUNT,
  mergePlace,
} from './zone-digest.js';

/** The period a digest starts with; one minute keeps every stop and short open apart (common practice). */
export const SMALLEST_PERIOD_MS = 60_000;

/** Memory that a digest may take unless told otherwise: about four months of 24 zones by the minute. */
export const DEFAULT_BUDGET_BYTES = 160e6;

/**
 * A log with holes of months or years is kept by the minute over a quarter of a year, or as long as a quarter of the grid is
 * filled; a longer grid is made of holes, and memory and time would go into those (own choice).
 */
const SPARSE_PLACES = 128 * 1024;
const MOST_PLACES_PER_FILLED = 4;

/** Places per chunk; chunks are made where samples are, so a hole of weeks costs nothing until `finish`. */
const PLACES_PER_CHUNK = 1024;

/** A digest while it grows. */
export interface GrowingDigest {
  /** Counts in a block. Blocks may come in any order of zones and minutes; the block is not kept or changed. */
  take(block: SampleBlock): void;
  /** The digest of all that was taken; the growing one is spent afterwards. */
  finish(): PlantDigest;
}

/**
 * Starts a digest of all zones on one grid of minutes (`PlantDigest` says what each column holds). Only samples whose
 * state is good count as readings; all others count as bad. Where two blocks share a minute, the one taken first
 * counts as the earlier part of it.
 *
 * @param zones By index.
 * @param budgetBytes When the grid would need more, or is long and mostly holes, the period doubles (60 s, 2 min,
 *   4 min …) by merging neighbours; the period used stands in the result.
 * @returns Never throws in use, except for a block whose zone is not in the list. Cost about 10 ns a sample.
 */
export function startDigest(zones: readonly Zone[], budgetBytes = DEFAULT_BUDGET_BYTES): GrowingDigest {
  let periodMs = SMALLEST_PERIOD_MS;
  let chunks: Map<number, ZoneDigest>[] = zones.map(() => new Map());
  let firstChunk = Infinity;
  let lastChunk = -Infinity;

  function coarsen(): void {
    periodMs *= 2;
    chunks = chunks.map(halveChunks);
    firstChunk = Math.floor(firstChunk / 2);
    lastChunk = Math.floor(lastChunk / 2);
  }

  /** Places of the chunks of the zone that has most. */
  function filledPlaces(): number {
    return chunks.reduce((most, held) => Math.max(most, held.size), 0) * PLACES_PER_CHUNK;
  }

  /** Makes room for a time: coarsens first when the grid would grow beyond the budget. */
  function reach(timeMs: number): void {
    for (;;) {
      const chunk = Math.floor(timeMs / (periodMs * PLACES_PER_CHUNK));
      const first = Math.min(firstChunk, chunk);
      const last = Math.max(lastChunk, chunk);
      const places = (last - first + 1) * PLACES_PER_CHUNK;
      const fitsMemory = places * BYTES_PER_PLACE * zones.length <= budgetBytes;
      if (
        (fitsMemory && places <= Math.max(SPARSE_PLACES, filledPlaces() * MOST_PLACES_PER_FILLED)) ||
        last === first
      ) {
        firstChunk = first;
        lastChunk = last;
        return;
      }
      coarsen();
    }
  }

  const open = emptyZoneDigest(1);

  function store(zone: number, place: number): void {
    const index = Math.floor(place / PLACES_PER_CHUNK);
    let chunk = chunks[zone]!.get(index);
    if (!chunk) chunks[zone]!.set(index, (chunk = emptyZoneDigest(PLACES_PER_CHUNK)));
    mergePlace(chunk, place - index * PLACES_PER_CHUNK, open, 0);
  }

  return {
    take(block) {
      if (block.length === 0) return;
      if (!chunks[block.zone]) throw new RangeError(`Zone index ${block.zone}: the digest has ${zones.length} zones.`);
      reach(block.timeMs[0]!);
      reach(block.timeMs[block.length - 1]!);
      for (let from = 0; from < block.length;) {
        const place = Math.floor(block.timeMs[from]! / periodMs);
        const to = endOfPeriod(block, from, (place + 1) * periodMs);
        digestSamples(block, from, to, open);
        store(block.zone, place);
        from = to;
      }
    },
    finish() {
      const { first, length } = filledRange(chunks);
      const digests = chunks.map((held) => {
        const zone = emptyZoneDigest(length);
        for (const [index, chunk] of held) placeChunk(chunk, index * PLACES_PER_CHUNK - first, zone, length);
        held.clear(); // lets the memory of one zone go before the next one is laid out
        return zone;
      });
      return { startMs: first * periodMs, periodMs, length, zones: digests };
    },
  };
}

function endOfPeriod(block: SampleBlock, from: number, endMs: number): number {
  const { timeMs, length } = block;
  let to = from + 1;
  while (to < length && timeMs[to]! < endMs) to++;
  return to;
}

/** Fills the one place of `into` from samples `from` … `to` − 1. Sums are taken about the first value, for accuracy. */
function digestSamples(block: SampleBlock, from: number, to: number, into: ZoneDigest): void {
  const { readingDegC, state, outputPercent, setpointDegC, running } = block;
  let count = 0;
  let first = NaN;
  let last = NaN;
  let min = Infinity;
  let max = -Infinity;
  let sum = 0;
  let squares = 0;
  let outputSum = 0;
  let outputCount = 0;
  let setpointSum = 0;
  let setpointCount = 0;
  let runningSum = 0;
  let runningCount = 0;
  // All columns in one loop, so that a period is walked over once.
  for (let i = from; i < to; i++) {
    const output = outputPercent[i]!;
    const setpoint = setpointDegC[i]!;
    const runs = running[i]!;
    if (output === output) {
      outputSum += output;
      outputCount++;
    }
    if (setpoint === setpoint) {
      setpointSum += setpoint;
      setpointCount++;
    }
    if (runs === runs) {
      runningSum += runs;
      runningCount++;
    }
    if (state[i] !== readingState.good) continue;
    const degC = readingDegC[i]!;
    if (count++ === 0) first = degC;
    last = degC;
    if (degC < min) min = degC;
    if (degC > max) max = degC;
    const apart = degC - first;
    sum += apart;
    squares += apart * apart;
  }
  const mean = sum / count; // NaN for no readings
  into.readingCount[0] = Math.min(LARGEST_COUNT, count);
  into.badCount[0] = Math.min(LARGEST_COUNT, to - from - count);
  into.firstDegC[0] = first;
  into.lastDegC[0] = last;
  into.minDegC[0] = count ? min : NaN;
  into.maxDegC[0] = count ? max : NaN;
  into.meanDegC[0] = first + mean;
  into.spreadDegC[0] = Math.sqrt(Math.max(0, squares / count - mean * mean));
  into.outputPercent[0] = outputSum / outputCount;
  into.setpointDegC[0] = setpointSum / setpointCount;
  into.runningShare[0] = runningSum / runningCount;
}

function halveChunks(held: Map<number, ZoneDigest>): Map<number, ZoneDigest> {
  const halved = new Map<number, ZoneDigest>();
  for (const index of [...held.keys()].sort((a, b) => a - b)) {
    const target = Math.floor(index / 2);
    const into = halved.get(target) ?? emptyZoneDigest(PLACES_PER_CHUNK);
    halved.set(target, into);
    const offset = (index - 2 * target) * (PLACES_PER_CHUNK / 2);
    for (let i = 0; i < PLACES_PER_CHUNK; i++) mergePlace(into, offset + (i >> 1), held.get(index)!, i);
    held.delete(index);
  }
  return halved;
}

/** First filled place and number of places up to the last filled one, over all zones. */
function filledRange(chunks: readonly Map<number, ZoneDigest>[]): { first: number; length: number } {
  let first = Infinity;
  let last = -Infinity;
  for (const held of chunks) {
    for (const [index, chunk] of held) {
      const base = index * PLACES_PER_CHUNK;
      if (base + PLACES_PER_CHUNK <= first || base < first) {
        for (let i = 0; i < PLACES_PER_CHUNK && base + i < first; i++) if (!isEmptyPlace(chunk, i)) first = base + i;
      }
      for (let i = PLACES_PER_CHUNK - 1; i >= 0 && base + i > last; i--) if (!isEmptyPlace(chunk, i)) last = base + i;
    }
  }
  return last < first ? { first: 0, length: 0 } : { first, length: last - first + 1 };
}

function placeChunk(chunk: ZoneDigest, at: number, zone: ZoneDigest, length: number): void {
  const start = Math.max(0, -at);
  const end = Math.min(PLACES_PER_CHUNK, length - at);
  if (end > start) copyPlaces(chunk, start, end - start, zone, at + start);
}
