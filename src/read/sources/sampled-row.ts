/** One sampled row. */
export interface SampledRow {
  /** Number of the stretch it comes from; rows of different stretches are not neighbours. */
  readonly stretch: number;
  /** From 1; NaN inside the file. */
  readonly line: number;
  readonly cells: readonly string[];
}
