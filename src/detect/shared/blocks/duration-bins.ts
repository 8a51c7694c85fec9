/** Runs by duration: bin k holds 2^(k−1) … 2^k seconds, bin 0 those below one second. */
const DURATION_BINS = 32;

/** Counts of runs, none yet. */
export function noDurations(): Uint32Array {
  return new Uint32Array(DURATION_BINS);
}

/** Bin of a run of so many ms, 0 or more; the last one holds all that last 2^30 s and longer. */
export function durationBin(durationMs: number): number {
  return 32 - Math.clz32(Math.min(0x7fffffff, durationMs / 1000));
}

/** Upper end of the bin that holds the 99th of 100 runs, seconds; 0 for none. */
export function usualLongS(counts: Uint32Array): number {
  const total = counts.reduce((sum, count) => sum + count, 0);
  let reached = 0;
  for (let bin = 0; bin < DURATION_BINS; bin++) {
    reached += counts[bin]!;
    if (reached >= 0.99 * total) return bin === 0 ? 0 : 2 ** bin;
  }
  return 0;
}
