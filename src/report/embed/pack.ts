/** A step, null for no number, or a pair: either of them, and how often it comes in a row. */
type Step = number | null | readonly [number | null, number];

/**
 * A column of numbers as whole steps from one to the next. JSON writes small whole numbers in one to three signs and
 * a row of equal ones as a pair, so a trace takes a fifth of what its decimals would.
 */
export interface PackedColumn {
  /** Steps in one unit. */
  readonly perUnit: number;
  readonly steps: readonly Step[];
}

/** A tenth of a degree or percent is finer than a chart can show. */
const tenths = 10;

/** A pair is shorter than its repeats from here on. */
const worthPairing = 4;

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
  return hasNumber ? { perUnit, steps: pairRepeats(steps) } : null;
}

/** The column again, rounded to its steps; nulls where there was no column. */
export function unpackColumn(packed: PackedColumn | null, length: number): readonly (number | null)[] {
  if (!packed) return Array.from({ length }, () => null);
  let now = 0;
  const values: (number | null)[] = [];
  for (const entry of packed.steps) {
    const [step, times] = Array.isArray(entry)
      ? (entry as readonly [number | null, number])
      : [entry as number | null, 1];
    for (let i = 0; i < times; i++) {
      if (step !== null) now += step;
      values.push(step === null ? null : now / packed.perUnit);
    }
  }
  return values;
}

function pairRepeats(steps: readonly (number | null)[]): readonly Step[] {
  const paired: Step[] = [];
  for (let from = 0; from < steps.length;) {
    let to = from + 1;
    while (to < steps.length && steps[to] === steps[from]) to++;
    const step = steps[from] ?? null;
    if (to - from >= worthPairing) paired.push([step, to - from]);
    else for (let i = from; i < to; i++) paired.push(step);
    from = to;
  }
  return paired;
}
