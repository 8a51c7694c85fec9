/**
 * Count, mean and spread of a stream as a few plain numbers, so that they can be stored and merged.
 * `squares` is the sum of squared deviations from the mean.
 */
export interface Moments {
  count: number;
  mean: number;
  squares: number;
  min: number;
  max: number;
}

/** Nothing seen yet: mean NaN, limits NaN. */
export function noMoments(): Moments {
  return { count: 0, mean: NaN, squares: 0, min: NaN, max: NaN };
}

/**
 * Takes one value into `moments`, in place (Welford 1962, Technometrics 4:419–420).
 *
 * @param value NaN and ±Infinity are skipped. Never throws.
 */
export function addToMoments(moments: Moments, value: number): void {
  if (!Number.isFinite(value)) return;
  moments.count++;
  if (moments.count === 1) {
    moments.mean = moments.min = moments.max = value;
    return;
  }
  const before = value - moments.mean;
  moments.mean += before / moments.count;
  moments.squares += before * (value - moments.mean);
  if (value < moments.min) moments.min = value;
  if (value > moments.max) moments.max = value;
}

/**
 * What one stream of both would have given (Chan, Golub & LeVeque 1983, The American Statistician 37:242–247).
 *
 * @returns A new object; the inputs stay. Never throws.
 */
export function mergeMoments(a: Moments, b: Moments): Moments {
  if (a.count === 0) return { ...b };
  if (b.count === 0) return { ...a };
  const count = a.count + b.count;
  const apart = b.mean - a.mean;
  return {
    count,
    mean: a.mean + (apart * b.count) / count,
    squares: a.squares + b.squares + (apart * apart * a.count * b.count) / count,
    min: Math.min(a.min, b.min),
    max: Math.max(a.max, b.max),
  };
}

/** Sample standard deviation, divided by n − 1. NaN for fewer than 2 values. */
export function sampleSd(moments: Moments): number {
  return moments.count < 2 ? NaN : Math.sqrt(moments.squares / (moments.count - 1));
}

/** Population standard deviation, divided by n (SQL STDDEV_POP). 0 for one value, NaN for none. */
export function populationSd(moments: Moments): number {
  return moments.count < 1 ? NaN : Math.sqrt(moments.squares / moments.count);
}

/** Count, mean and spread of a whole array. NaN and ±Infinity are skipped. */
export function momentsOf(values: ArrayLike<number>): Moments {
  const moments = noMoments();
  for (let i = 0; i < values.length; i++) addToMoments(moments, values[i]!);
  return moments;
}
