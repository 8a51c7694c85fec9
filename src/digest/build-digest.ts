import type { PlantDigest, ZoneDigest } from '../model/digest.js';
import { readingState, type SampleBlock } from '../model/sample-block.js';
import type { Zone } from '../model/zone.js';
import { GridRoom, PLACES_PER_STEP } from './grid-room.js';
import { BYTES_PER_PLACE, emptyZoneDigest, LARGEST_COUNT } from './zone-digest.js';

/** The period a digest starts with; one minute keeps every stop and short open apart (common practice). */
export const SMALLEST_PERIOD_MS = 60_000;

/**
 * Memory that a digest may take unless told otherwise: a quarter of a year of 24 zones by the minute. Judges and page
 * need about twice as much beside it, and a run on the largest plant is to stay below 400 MB (own choice).
 */
const DEFAULT_BUDGET_BYTES = 126e6;

/**
 * A log with holes of months or years is kept by the minute over a quarter of a year, or as long as a quarter of the grid is
 * filled; a longer grid is made of holes, and memory and time would go into those (own choice).
 */
const SPARSE_STEPS = 128;
const MOST_STEPS_PER_FILLED = 4;

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
  let firstStep = Infinity;
  let lastStep = -Infinity;
  /** By zone: the steps of the grid in which something was counted. */
  let filledSteps = zones.map(() => new Set<number>());
  const fittingPlaces = Math.floor(budgetBytes / (BYTES_PER_PLACE * zones.length));
  const mostSteps = Math.max(1, Math.floor(fittingPlaces / PLACES_PER_STEP));
  const room = new GridRoom(zones.length, mostSteps * PLACES_PER_STEP);

  function coarsen(): void {
    periodMs *= 2;
    room.halve();
    filledSteps = filledSteps.map((steps) => new Set([...steps].map((step) => Math.floor(step / 2))));
    firstStep = Math.floor(firstStep / 2);
    lastStep = Math.floor(lastStep / 2);
  }

  /** Steps of the zone that has most. */
  function mostFilledSteps(): number {
    return filledSteps.reduce((most, { size }) => Math.max(most, size), 0);
  }

  /** Makes room for a time: coarsens first when the grid would grow beyond the budget. */
  function reach(timeMs: number): void {
    for (;;) {
      const step = Math.floor(timeMs / (periodMs * PLACES_PER_STEP));
      const first = Math.min(firstStep, step);
      const last = Math.max(lastStep, step);
      const steps = last - first + 1;
      if (
        steps === 1 ||
        (steps <= mostSteps && steps <= Math.max(SPARSE_STEPS, mostFilledSteps() * MOST_STEPS_PER_FILLED))
      ) {
        firstStep = first;
        lastStep = last;
        return;
      }
      coarsen();
    }
  }

  const open = emptyZoneDigest(1);

  return {
    take(block) {
      if (block.length === 0) return;
      const filled = filledSteps[block.zone];
      if (!filled) throw new RangeError(`Zone index ${block.zone}: the digest has ${zones.length} zones.`);
      reach(block.timeMs[0]!);
      reach(block.timeMs[block.length - 1]!);
      for (let from = 0, usual = 1; from < block.length;) {
        const place = Math.floor(block.timeMs[from]! / periodMs);
        const to = endOfPeriod(block, from, (place + 1) * periodMs, usual);
        usual = to - from;
        digestSamples(block, from, to, open);
        filled.add(Math.floor(place / PLACES_PER_STEP));
        room.store(block.zone, place, firstStep * PLACES_PER_STEP, open);
        from = to;
      }
    },
    finish() {
      const { first, length } = room.filledRange();
      return { startMs: first * periodMs, periodMs, length, zones: room.finish(first, length) };
    },
  };
}

/** @param usual Samples of the period before: most have as many. */
function endOfPeriod({ timeMs, length }: SampleBlock, from: number, endMs: number, usual: number): number {
  const likely = from + usual;
  if (likely < length && timeMs[likely]! >= endMs && timeMs[likely - 1]! < endMs) return likely;
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
