/** Numbers in any array-like holder: number[], Float32Array, Float64Array … */
export type Numbers = ArrayLike<number>;

/**
 * The numbers that carry data, in their order.
 *
 * @param values NaN and ±Infinity mean no data.
 * @returns A new array; empty when nothing is usable. Never throws, never changes its input.
 */
export function finiteValues(values: Numbers): Float64Array {
  const kept = new Float64Array(values.length);
  return kept.subarray(0, finiteInto(kept, values));
}

/** The same into the front of an array that is long enough; returns how many they are. What lies behind is undefined. */
export function finiteInto(room: Float64Array, values: Numbers): number {
  room.set(values); // the loop then meets one type of array, whatever came in: each other one would have it translated anew
  return moveFiniteToFront(room, values.length);
}

function moveFiniteToFront(room: Float64Array, length: number): number {
  let count = 0;
  for (let i = 0; i < length; i++) {
    const value = room[i]!;
    if (Number.isFinite(value)) room[count++] = value;
  }
  return count;
}

/** Indices of the numbers that carry data, ascending. Never throws. */
export function usablePlaces(values: Numbers): number[] {
  const places: number[] = [];
  for (let i = 0; i < values.length; i++) if (Number.isFinite(values[i]!)) places.push(i);
  return places;
}

export interface Pairs {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * The pairs in which both numbers carry data, in their order.
 *
 * @param x, y The same length; what one has beyond the other is left out.
 * @returns Two new arrays of equal length. Never throws.
 */
export function finitePairs(x: Numbers, y: Numbers): Pairs {
  const length = Math.min(x.length, y.length);
  const keptX = new Float64Array(length);
  const keptY = new Float64Array(length);
  let count = 0;
  for (let i = 0; i < length; i++) {
    if (!Number.isFinite(x[i]!) || !Number.isFinite(y[i]!)) continue;
    keptX[count] = x[i]!;
    keptY[count++] = y[i]!;
  }
  return { x: keptX.subarray(0, count), y: keptY.subarray(0, count) };
}

/** As `finitePairs`, ascending in x; pairs of equal x keep their order. Cost n·log n. */
export function pairsByX(x: Numbers, y: Numbers): Pairs {
  const pairs = finitePairs(x, y);
  if (isAscending(pairs.x)) return pairs;
  const order = Array.from(pairs.x.keys()).sort((a, b) => pairs.x[a]! - pairs.x[b]!);
  return { x: Float64Array.from(order, (i) => pairs.x[i]!), y: Float64Array.from(order, (i) => pairs.y[i]!) };
}

function isAscending(values: Float64Array): boolean {
  for (let i = 1; i < values.length; i++) if (values[i]! < values[i - 1]!) return false;
  return true;
}
