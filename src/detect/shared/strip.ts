import { readingState, type SampleBlock } from '../../model/sample-block.js';

/**
 * Neighbouring samples of one zone side by side: those remembered from before, then the new ones. Places below `to`
 * count; the new ones begin at `from`. `degC` is NaN wherever the sample is not good.
 */
export interface Strip {
  readonly timeMs: Float64Array;
  readonly degC: Float64Array;
  readonly setpointDegC: Float64Array;
  readonly outputPercent: Float64Array;
  readonly running: Float64Array;
  readonly from: number;
  readonly to: number;
}

type Column = 'timeMs' | 'degC' | 'setpointDegC' | 'outputPercent' | 'running';
const columns: readonly Column[] = ['timeMs', 'degC', 'setpointDegC', 'outputPercent', 'running'];

/** A few samples kept from one block to the next, or to the merge with another piece of the log. */
export interface Samples extends Readonly<Record<Column, Float64Array>> {
  length: number;
}

export function noSamples(room: number): Samples {
  return {
    length: 0,
    timeMs: new Float64Array(room),
    degC: new Float64Array(room),
    setpointDegC: new Float64Array(room),
    outputPercent: new Float64Array(room),
    running: new Float64Array(room),
  };
}

export function copySamples(from: Samples): Samples {
  const copy = noSamples(from.timeMs.length);
  for (const column of columns) copy[column].set(from[column]);
  copy.length = from.length;
  return copy;
}

/** Working room shared by all watchers of one run; a strip is used up before the next one is laid. */
let room = makeRoom(0);

function makeRoom(length: number): Samples {
  return { ...noSamples(length), length };
}

function roomFor(length: number): Samples {
  if (room.length < length) room = makeRoom(Math.max(length, 2 * room.length));
  return room;
}

/** Lays the remembered samples and those of a block side by side. Valid until the next strip is laid. */
export function stripOfBlock(before: Samples, block: SampleBlock): Strip {
  const from = before.length;
  const to = from + block.length;
  const strip = roomFor(to);
  for (const column of columns) strip[column].set(before[column].subarray(0, from));
  strip.timeMs.set(block.timeMs.subarray(0, block.length), from);
  strip.setpointDegC.set(block.setpointDegC.subarray(0, block.length), from);
  strip.outputPercent.set(block.outputPercent.subarray(0, block.length), from);
  strip.running.set(block.running.subarray(0, block.length), from);
  const { readingDegC, state } = block;
  for (let i = 0; i < block.length; i++) strip.degC[from + i] = state[i] === readingState.good ? readingDegC[i]! : NaN;
  return { ...columnsOf(strip), from, to };
}

/** Lays two sets of samples side by side; the second one is new. `count` of it are used. */
export function stripOfSamples(before: Samples, later: Samples, count: number): Strip {
  const from = before.length;
  const to = from + count;
  const strip = roomFor(to);
  for (const column of columns) {
    strip[column].set(before[column].subarray(0, from));
    strip[column].set(later[column].subarray(0, count), from);
  }
  return { ...columnsOf(strip), from, to };
}

function columnsOf({ timeMs, degC, setpointDegC, outputPercent, running }: Samples): Omit<Strip, 'from' | 'to'> {
  return { timeMs, degC, setpointDegC, outputPercent, running };
}

/** Keeps the last samples of a strip, as many as there is room for. */
export function keepLast(memory: Samples, strip: Strip): void {
  const length = Math.min(memory.timeMs.length, strip.to);
  for (const column of columns) memory[column].set(strip[column].subarray(strip.to - length, strip.to));
  memory.length = length;
}

/** Adds new samples of a strip as long as there is room. */
export function keepFirst(memory: Samples, strip: Strip): void {
  const count = Math.min(memory.timeMs.length - memory.length, strip.to - strip.from);
  if (count <= 0) return;
  for (const column of columns) {
    memory[column].set(strip[column].subarray(strip.from, strip.from + count), memory.length);
  }
  memory.length += count;
}
