import type { SampleBlock } from '../../../model/sample-block.js';

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

type Columns = Omit<Strip, 'from' | 'to'>;

/** A few samples kept from one block to the next, or to the merge with another piece of the log. */
export interface Samples extends Columns {
  length: number;
}

/** Room for so many samples, none in it yet. */
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

/** The same samples in arrays of their own, with as much room. */
export function copySamples(from: Samples): Samples {
  const copy = noSamples(from.timeMs.length);
  copyPlaces(from, 0, from.length, copy, 0);
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

/**
 * Lays the remembered samples and the first `count` of a block side by side. Valid until the next strip is laid.
 *
 * @param degC Readings of the block, NaN where the sample is not good.
 */
export function stripOfSeam(before: Samples, block: SampleBlock, degC: Float64Array, count: number): Strip {
  const from = before.length;
  const to = from + count;
  const strip = roomFor(to);
  copyPlaces(before, 0, from, strip, 0);
  copyPlaces(stripInBlock(block, degC, 0), 0, count, strip, from);
  return stripOf(strip, from, to);
}

/** The samples of a block from `from` on, in place: nothing is copied. `degC` as in its facts. */
export function stripInBlock(block: SampleBlock, degC: Float64Array, from: number): Strip {
  const { timeMs, setpointDegC, outputPercent, running, length } = block;
  return { timeMs, degC, setpointDegC, outputPercent, running, from, to: length };
}

/** Lays two sets of samples side by side; the second one is new. `count` of it are used. */
export function stripOfSamples(before: Samples, later: Samples, count: number): Strip {
  const from = before.length;
  const to = from + count;
  const strip = roomFor(to);
  copyPlaces(before, 0, from, strip, 0);
  copyPlaces(later, 0, count, strip, from);
  return stripOf(strip, from, to);
}

/** The same strip, ending at place `to`. */
export function stripUpTo(strip: Strip, to: number): Strip {
  return stripOf(strip, strip.from, to);
}

/** Written out, for spreading an object here takes longer than copying the places (measured). */
function stripOf({ timeMs, degC, setpointDegC, outputPercent, running }: Columns, from: number, to: number): Strip {
  return { timeMs, degC, setpointDegC, outputPercent, running, from, to };
}

/** Keeps the last samples of a strip, as many as there is room for. */
export function keepLast(memory: Samples, strip: Strip): void {
  const length = Math.min(memory.timeMs.length, strip.to);
  copyPlaces(strip, strip.to - length, length, memory, 0);
  memory.length = length;
}

/** Adds new samples of a strip as long as there is room. */
export function keepFirst(memory: Samples, strip: Strip): void {
  const count = Math.min(memory.timeMs.length - memory.length, strip.to - strip.from);
  if (count <= 0) return;
  copyPlaces(strip, strip.from, count, memory, memory.length);
  memory.length += count;
}

function copyPlaces(source: Columns, start: number, count: number, into: Columns, at: number): void {
  copyColumn(source.timeMs, start, count, into.timeMs, at);
  copyColumn(source.degC, start, count, into.degC, at);
  copyColumn(source.setpointDegC, start, count, into.setpointDegC, at);
  copyColumn(source.outputPercent, start, count, into.outputPercent, at);
  copyColumn(source.running, start, count, into.running, at);
}

/** A loop, for a call of `set` with a part costs more than the few places that are copied here. */
function copyColumn(source: Float64Array, start: number, count: number, into: Float64Array, at: number): void {
  for (let i = 0; i < count; i++) into[at + i] = source[start + i]!;
}
