import type { Cusum } from '../../src/maths/cusum.js';

/** Index of the first sum above the limit; −1 for none. */
export function firstSignal({ high, low }: Cusum, limit: number): number {
  return high.findIndex((sum, i) => Math.max(sum, low[i]!) > limit);
}
