import type { Numbers } from './finite.js';

// `Math.min(...values)` ends the program above some 120,000 numbers: each becomes an argument on the stack.

/** Lowest of any number of values, as Math.min has it: Infinity for none, NaN where one is NaN. Never throws. */
export function lowest(values: Numbers): number {
  let low = Infinity;
  for (let i = 0; i < values.length; i++) low = Math.min(low, values[i]!);
  return low;
}

/** Highest of any number of values, as Math.max has it: -Infinity for none, NaN where one is NaN. Never throws. */
export function highest(values: Numbers): number {
  let high = -Infinity;
  for (let i = 0; i < values.length; i++) high = Math.max(high, values[i]!);
  return high;
}
