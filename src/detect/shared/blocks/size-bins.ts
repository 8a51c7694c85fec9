/**
 * Bins for sizes from 0 up, cheap to find: one bin per unit below 32 units, then eight bins per doubling. A centre is
 * then off by at most half a unit or about 6 %.
 */
const LINEAR_BINS = 32;
const BINS_PER_DOUBLING = 8;
/** Sizes from 2^20 units on share the last bin. */
const DOUBLINGS = 15;

/** How many bins there are; bins are numbered from 0. */
export const BIN_COUNT = LINEAR_BINS + DOUBLINGS * BINS_PER_DOUBLING;

/** Bin of a size that is not negative. Never throws. */
export function binOf(size: number, unit: number): number {
  const units = size / unit + 0.5;
  if (units < LINEAR_BINS) return units | 0;
  if (units >= 2 ** 20) return BIN_COUNT - 1;
  const whole = units | 0;
  const doubling = 31 - Math.clz32(whole);
  return LINEAR_BINS + (doubling - 5) * BINS_PER_DOUBLING + ((whole >> (doubling - 3)) & (BINS_PER_DOUBLING - 1));
}

/** Size in the middle of a bin. */
export function binCentre(bin: number, unit: number): number {
  if (bin < LINEAR_BINS) return bin * unit;
  const doubling = 5 + Math.floor((bin - LINEAR_BINS) / BINS_PER_DOUBLING);
  const part = (bin - LINEAR_BINS) % BINS_PER_DOUBLING;
  const width = 2 ** (doubling - 3);
  return ((BINS_PER_DOUBLING + part) * width + (width - 1) / 2) * unit;
}
