/**
 * A column of numbers as whole steps from one to the next, null where there is none. JSON writes small whole numbers
 * in one to three signs, so a trace takes a third of what its decimals would.
 */
export interface PackedColumn {
  /** Steps in one unit. */
  readonly perUnit: number;
  readonly steps: readonly (number | null)[];
}

/** A tenth of a degree or percent is finer than a chart can show. */
const tenths = 10;

/** @returns null for a column without any number, so that it costs nothing. */
export function packColumn(values: readonly (number | null)[], perUnit = tenths): PackedColumn | null {
  let before = 0;
  let hasNumber = false;
  const steps = values.map((value) => {
    if (value === null || !Number.isFinite(value)) return null;
    hasNumber = true;
    const now = Math.round(value * perUnit);
    const step = now - before;
    before = now;
    return step;
  });
  return hasNumber ? { perUnit, steps } : null;
}

/** The column again, rounded to its steps; nulls where there was no column. */
export function unpackColumn(packed: PackedColumn | null, length: number): readonly (number | null)[] {
  if (!packed) return Array.from({ length }, () => null);
  let now = 0;
  return packed.steps.map((step) => {
    if (step === null) return null;
    now += step;
    return now / packed.perUnit;
  });
}
