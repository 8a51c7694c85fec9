import type { Numbers } from './finite.js';
import { addedOf, type AddedColumn, type PartialledOut } from './added-column.js';

/** A column that is 0 before its onset: behind it a straight line of slope 1, or 1 at the onset and decaying. */
export type TailLaw = 'line' | { readonly decayPerMs: number };

/** What adding the column that begins at a time does; `from` is the first row at or behind that time. */
export type TryOnset = (onsetMs: number, from: number) => AddedColumn;

/**
 * Makes all columns of one law ready to be tried in a model, each at the cost of the model's columns and not of its
 * rows: sums over the rows behind an onset follow from those behind the next row. Same answers as `addColumn`.
 *
 * @param timeMs Rising; as many as the model has rows. @returns Never throws.
 */
export function tailColumns(part: PartialledOut, timeMs: Numbers, law: TailLaw): TryOnset {
  return law === 'line' ? lines(part, timeMs) : decays(part, timeMs, law.decayPerMs);
}

/** Sums Σ value·w and, for lines, Σ (t − tᵢ)·value·w over rows i and later, of the rest and of each basis column. */
interface Sums {
  /** Row after row, `width` numbers each: the rest first, then the basis. One row of zeros behind the last. */
  readonly level: Float64Array;
  readonly width: number;
}

function startSums({ basis, roots }: PartialledOut): Sums {
  const width = basis.length + 1;
  return { level: new Float64Array((roots.length + 1) * width), width };
}

function decays(part: PartialledOut, timeMs: Numbers, decayPerMs: number): TryOnset {
  const { basis, roots, rest } = part;
  const { level, width } = startSums(part);
  const squares = new Float64Array(roots.length + 1);
  for (let i = roots.length - 1; i >= 0; i--) {
    const kept = i + 1 < roots.length ? Math.exp((timeMs[i]! - timeMs[i + 1]!) * decayPerMs) : 0;
    const root = roots[i]!;
    const at = i * width;
    squares[i] = root * root + kept * kept * squares[i + 1]!;
    level[at] = root * rest[i]! + kept * level[at + width]!;
    for (let k = 1; k < width; k++) level[at + k] = root * basis[k - 1]![i]! + kept * level[at + width + k]!;
  }
  return (onsetMs, from) => {
    const height = Math.exp((onsetMs - timeMs[from]!) * decayPerMs);
    const at = from * width;
    let along = 0;
    for (let k = 1; k < width; k++) along += level[at + k]! * level[at + k]!;
    return addedOf(height * level[at]!, height * height * squares[from]!, height * height * along);
  };
}

function lines(part: PartialledOut, timeMs: Numbers): TryOnset {
  const { basis, roots, rest } = part;
  const { level, width } = startSums(part);
  const slope = new Float64Array(level.length);
  const weight = new Float64Array(roots.length + 1);
  const weightSlope = new Float64Array(roots.length + 1);
  const squares = new Float64Array(roots.length + 1);
  for (let i = roots.length - 1; i >= 0; i--) {
    const stepMs = i + 1 < roots.length ? timeMs[i + 1]! - timeMs[i]! : 0;
    const root = roots[i]!;
    const at = i * width;
    weight[i] = root * root + weight[i + 1]!;
    weightSlope[i] = weightSlope[i + 1]! + stepMs * weight[i + 1]!;
    squares[i] = squares[i + 1]! + 2 * stepMs * weightSlope[i + 1]! + stepMs * stepMs * weight[i + 1]!;
    for (let k = 0; k < width; k++) {
      const next = level[at + width + k]!;
      level[at + k] = root * (k === 0 ? rest : basis[k - 1]!)[i]! + next;
      slope[at + k] = slope[at + width + k]! + stepMs * next;
    }
  }
  return (onsetMs, from) => {
    const leadMs = timeMs[from]! - onsetMs;
    const at = from * width;
    const before = squares[from]! + 2 * leadMs * weightSlope[from]! + leadMs * leadMs * weight[from]!;
    let along = 0;
    for (let k = 1; k < width; k++) along += (slope[at + k]! + leadMs * level[at + k]!) ** 2;
    return addedOf(slope[at]! + leadMs * level[at]!, before, along);
  };
}
