import type { Numbers } from './finite.js';

/** Sums over a stretch from ≤ i < to, from running totals. */
export interface StretchSums {
  mean(from: number, to: number): number;
  /** Sum of squared deviations from the stretch's own mean. */
  squares(from: number, to: number): number;
}

/** Running totals of the values at `places`, about their overall mean so that large levels do not cost figures. */
export function prefixSums(values: Numbers, places: readonly number[]): StretchSums {
  const centre = places.reduce((sum, i) => sum + values[i]!, 0) / places.length;
  const first = new Float64Array(places.length + 1);
  const second = new Float64Array(places.length + 1);
  for (const [rank, i] of places.entries()) {
    const value = values[i]! - centre;
    first[rank + 1] = first[rank]! + value;
    second[rank + 1] = second[rank]! + value * value;
  }
  const sum = (from: number, to: number) => first[to]! - first[from]!;
  return {
    mean: (from, to) => centre + sum(from, to) / (to - from),
    squares: (from, to) => {
      const total = sum(from, to); // a power operator here would double the cost of a search over many stretches
      return Math.max(0, second[to]! - second[from]! - (total * total) / (to - from));
    },
  };
}

/** Running totals of doubles resolve a sum of squares no better than this share of the whole. About 5000 × 2⁻⁵². */
const RESOLVED_SHARE = 1e-12;

/**
 * A sum of squares left by a perfect fit, as it may be used in a logarithm: not below what arithmetic can tell from 0.
 *
 * @param without The sum of squares without that fit.
 */
export function resolvedSquares(squares: number, without: number): number {
  return Math.max(squares, RESOLVED_SHARE * without);
}

/** Whether the deviations of values of this size from their mean are more than rounding of the arithmetic. */
export function isVaried(squares: number, values: Numbers): boolean {
  let largest = 0;
  for (let i = 0; i < values.length; i++)
    if (Number.isFinite(values[i]!)) largest = Math.max(largest, Math.abs(values[i]!));
  return squares > values.length * (4 * Number.EPSILON * largest) ** 2;
}
