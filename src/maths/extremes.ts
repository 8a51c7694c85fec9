// `Math.min(...values)` ends the program above some 120,000 numbers: each becomes an argument on the stack.

/** Lowest of any number of values, as Math.min has it: Infinity for none, NaN where one is NaN. Never throws. */
export function lowest(values: readonly number[]): number {
  return values.reduce((low, value) => Math.min(low, value), Infinity);
}

/** Highest of any number of values, as Math.max has it: -Infinity for none, NaN where one is NaN. Never throws. */
export function highest(values: readonly number[]): number {
  return values.reduce((high, value) => Math.max(high, value), -Infinity);
}
