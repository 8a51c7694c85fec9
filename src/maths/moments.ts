/** Count, mean and spread of an array. `squares` is the sum of squared deviations from the mean. */
export interface Moments {
  readonly count: number;
  /** NaN for no values. */
  readonly mean: number;
  readonly squares: number;
}

/**
 * Moments of a whole array, value by value (Welford 1962, Technometrics 4:419–420). Equal values have squares of
 * exactly 0, which sums of squares do not give.
 *
 * @param values NaN and ±Infinity are skipped. Never throws.
 */
export function momentsOf(values: ArrayLike<number>): Moments {
  let count = 0;
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    if (!Number.isFinite(value)) continue;
    const before = value - mean;
    mean += before / ++count;
    squares += before * (value - mean);
  }
  return { count, mean: count === 0 ? NaN : mean, squares };
}

/** Sample standard deviation, divided by n − 1. NaN for fewer than 2 values. */
export function sampleSd({ count, squares }: Moments): number {
  return count < 2 ? NaN : Math.sqrt(squares / (count - 1));
}

/** Population standard deviation, divided by n (SQL STDDEV_POP). 0 for one value, NaN for none. */
export function populationSd({ count, squares }: Moments): number {
  return count < 1 ? NaN : Math.sqrt(squares / count);
}
