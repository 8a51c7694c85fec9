export interface Minimum {
  readonly at: number;
  readonly value: number;
  /** Whether the least value lies at an end of the range, so that the true one may lie beyond. */
  readonly isAtEdge: boolean;
}

/** (√5 − 1)/2. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Leaves 1/2 000 000 of the bracket: golden section resolves no better near a flat bottom anyway. */
const ROUNDS = 30;

/**
 * Least value of a function of one number: an even grid, then golden-section search between the grid's neighbours.
 * Finds the global minimum where the function has no two dips within one grid step.
 *
 * @param from, to Range, from < to. @param steps Grid steps, 2 or more. NaN of the function counts as no minimum.
 * @returns NaN value when the function is NaN everywhere. Never throws. Calls the function about steps + 33 times.
 */
export function minimise(f: (at: number) => number, from: number, to: number, steps: number): Minimum {
  const width = (to - from) / steps;
  let best = -1;
  let least = Infinity;
  for (let i = 0; i <= steps; i++) {
    const value = f(from + i * width);
    if (value < least) [least, best] = [value, i];
  }
  if (best < 0) return { at: NaN, value: NaN, isAtEdge: false };
  const found = goldenSection(f, from + Math.max(0, best - 1) * width, from + Math.min(steps, best + 1) * width);
  const isBetter = found.value <= least;
  const at = isBetter ? found.at : from + best * width;
  const isAtEdge = (best === 0 || best === steps) && Math.min(at - from, to - at) < 0.01 * width;
  return { at, value: isBetter ? found.value : least, isAtEdge };
}

function goldenSection(f: (at: number) => number, from: number, to: number): { at: number; value: number } {
  let [low, high] = [from, to];
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let atLeft = f(left);
  let atRight = f(right);
  for (let round = 0; round < ROUNDS; round++) {
    if (atLeft < atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = f(right);
    }
  }
  return atLeft < atRight ? { at: left, value: atLeft } : { at: right, value: atRight };
}
