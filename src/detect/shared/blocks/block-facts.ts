import { readingState, type BlockFacts, type SampleBlock } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import {
  learnedRates,
  learnMoves,
  limitMemoryOf,
  startHeatingLimit,
  takeMoves,
  type HeatingLimit,
} from './heating-limit.js';
import { stripInBlock } from './strip.js';

/** Works out what the watchers of one zone ask of a block alike. */
export class ZoneFacts {
  /** What all blocks before taught: a move that is slower teaches no watcher anything. */
  private readonly known: HeatingLimit;
  private readonly memory: number;

  constructor(zone: Zone) {
    this.known = startHeatingLimit(zone);
    this.memory = limitMemoryOf(zone);
  }

  /**
   * Facts of the zone's next block. Valid until the next call for any zone, for the room is used again. A few passes
   * over the block; never throws.
   */
  of(block: SampleBlock): BlockFacts {
    const isAllGood = holdsOnlyGood(block);
    const degC = isAllGood ? block.readingDegC : goodReadings(block);
    const { stride, longestMs } = this.known;
    const moves: HeatingLimit = { stride, longestMs, heating: [], cooling: [] };
    const { largestStepDegC, longestGapMs, shortestGapMs } = stepsOf(block, degC);
    const passed = { ...learnedRates(this.known), shortestMs: 2 * stride * shortestGapMs };
    learnMoves(moves, stripInBlock(block, degC, this.memory), passed);
    takeMoves(this.known, moves);
    return { degC, isAllGood, largestStepDegC, longestGapMs, fastestMoves: moves };
  }
}

let good = new Uint8Array(0);

function holdsOnlyGood({ length, state }: SampleBlock): boolean {
  if (good.length < length) good = new Uint8Array(length).fill(readingState.good);
  return Buffer.compare(state.subarray(0, length), good.subarray(0, length)) === 0;
}

let room = new Float64Array(0);

function goodReadings({ length, readingDegC, state }: SampleBlock): Float64Array {
  if (room.length < length) room = new Float64Array(length);
  for (let i = 0; i < length; i++) room[i] = state[i] === readingState.good ? readingDegC[i]! : NaN;
  return room;
}

interface Steps extends Pick<BlockFacts, 'largestStepDegC' | 'longestGapMs'> {
  readonly shortestGapMs: number;
}

function stepsOf({ length, timeMs }: SampleBlock, degC: Float64Array): Steps {
  let largestStepDegC = 0;
  let longestGapMs = 0;
  let shortestGapMs = Infinity;
  let beforeDegC = NaN;
  let beforeMs = NaN;
  for (let i = 0; i < length; i++) {
    const nowDegC = degC[i]!;
    const nowMs = timeMs[i]!;
    const stepDegC = Math.abs(nowDegC - beforeDegC);
    if (stepDegC > largestStepDegC) largestStepDegC = stepDegC; // NaN fails
    const gapMs = nowMs - beforeMs;
    if (gapMs > longestGapMs) longestGapMs = gapMs;
    if (gapMs < shortestGapMs) shortestGapMs = gapMs;
    beforeDegC = nowDegC;
    beforeMs = nowMs;
  }
  return { largestStepDegC, longestGapMs, shortestGapMs };
}
