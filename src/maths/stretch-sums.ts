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
    squares: (from, to) => Math.max(0, second[to]! - second[from]! - sum(from, to) ** 2 / (to - from)),
  };
}
