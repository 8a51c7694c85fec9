import { readingState, type BlockFacts, type SampleBlock } from '../../model/sample-block.js';
import type { Zone } from '../../model/zone.js';
import { learnMoves, limitMemoryOf, startHeatingLimit } from './heating-limit.js';
import { stripInBlock } from './strip.js';

/**
 * Works out what the watchers of one zone ask of a block alike. Valid until the next call, for the room is used again.
 * Two passes over the block; never throws.
 */
export function factsOf(block: SampleBlock, zone: Zone): BlockFacts {
  const isAllGood = holdsOnlyGood(block);
  const degC = isAllGood ? block.readingDegC : goodReadings(block);
  const moves = startHeatingLimit(zone);
  learnMoves(moves, stripInBlock(block, degC, limitMemoryOf(zone)));
  return { degC, isAllGood, fastestMoves: moves, ...largestSteps(block, degC) };
}

function holdsOnlyGood({ length, state }: SampleBlock): boolean {
  for (let i = 0; i < length; i++) if (state[i] !== readingState.good) return false;
  return true;
}

let room = new Float64Array(0);

function goodReadings({ length, readingDegC, state }: SampleBlock): Float64Array {
  if (room.length < length) room = new Float64Array(length);
  for (let i = 0; i < length; i++) room[i] = state[i] === readingState.good ? readingDegC[i]! : NaN;
  return room;
}

function largestSteps(
  { length, timeMs }: SampleBlock,
  degC: Float64Array,
): Pick<BlockFacts, 'largestStepDegC' | 'longestGapMs'> {
  let largestStepDegC = 0;
  let longestGapMs = 0;
  for (let i = 1; i < length; i++) {
    const stepDegC = Math.abs(degC[i]! - degC[i - 1]!);
    if (stepDegC > largestStepDegC) largestStepDegC = stepDegC; // NaN fails
    const gapMs = timeMs[i]! - timeMs[i - 1]!;
    if (gapMs > longestGapMs) longestGapMs = gapMs;
  }
  return { largestStepDegC, longestGapMs };
}
