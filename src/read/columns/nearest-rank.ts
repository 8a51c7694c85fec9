/** Quantile by nearest rank; NaN for no values. */
export function nearestRank(values: readonly number[], share: number): number {
  if (values.length === 0) return NaN;
  // An array of numbers only sorts without a call for each comparison.
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
