import { INDEPENDENT_SHARE } from './added-column.js';
import type { Numbers } from './finite.js';

export interface LinearFit {
  /** One per column. All NaN when the columns do not determine them. */
  readonly coefficients: readonly number[];
  /** Covariance of the coefficients; all NaN when there is no degree of freedom left. */
  readonly covariance: readonly (readonly number[])[];
  /** √(Σ w·residual² / dof): standard deviation of an observation of weight 1. */
  readonly residualSd: number;
  /** Σ w·residual². */
  readonly residualSquares: number;
  /** Rows used minus number of columns. */
  readonly dof: number;
  /** Rows used. */
  readonly count: number;
}

/** A column of ones, for a model with an intercept. */
export function constantColumn(length: number): Float64Array {
  return new Float64Array(length).fill(1);
}

/**
 * Weighted least squares y ≈ Σ coefficient·column, by Householder QR (Golub & Van Loan, Matrix Computations, 5.3).
 *
 * @param columns One array per regressor, a few of them, each as long as `y`; add `constantColumn` for an intercept.
 * @param weights Inverse variances up to a factor; equal when left out. A row with a weight that is not above 0,
 *   or with NaN or ±Infinity anywhere, is skipped.
 * @returns NaN coefficients for fewer rows than columns or dependent columns. Never throws.
 *   Cost rows × columns² in time, rows × columns in memory.
 */
export function fitLinear(columns: readonly Numbers[], y: Numbers, weights?: Numbers): LinearFit {
  const rows = usableRows(columns, y, weights);
  const roots = rows.map((i) => Math.sqrt(weights ? weights[i]! : 1));
  const scaled = (values: Numbers) => Float64Array.from(rows, (row, i) => roots[i]! * values[row]!);
  const design = columns.map(scaled);
  const target = scaled(y);
  const count = rows.length;
  const width = columns.length;
  const diagonal = triangulate(design, target);
  if (count < width || diagonal === undefined) return undetermined(width, count);
  const coefficients = backSubstitute(design, diagonal, target);
  const residualSquares = target.subarray(width).reduce((sum, value) => sum + value * value, 0);
  const dof = count - width;
  const residualSd = dof > 0 ? Math.sqrt(residualSquares / dof) : NaN;
  const covariance = scaledInverseGram(design, diagonal, residualSd ** 2);
  return { coefficients, covariance, residualSd, residualSquares, dof, count };
}

function usableRows(columns: readonly Numbers[], y: Numbers, weights: Numbers | undefined): number[] {
  const rows: number[] = [];
  for (let i = 0; i < y.length; i++) {
    const isWeighed = weights === undefined || (Number.isFinite(weights[i]) && weights[i]! > 0);
    if (isWeighed && Number.isFinite(y[i]!) && columns.every((column) => Number.isFinite(column[i]))) rows.push(i);
  }
  return rows;
}

/**
 * Turns design into R (above its diagonal) and Householder vectors (below), and the target into Qᵀ·target, in place.
 * Returns the diagonal of R, or undefined for columns that are not independent.
 */
function triangulate(design: Float64Array[], target: Float64Array): number[] | undefined {
  const lengths = design.map((column) => normFrom(column, 0));
  const diagonal: number[] = [];
  for (const [k, pivot] of design.entries()) {
    const norm = normFrom(pivot, k);
    if (!(norm > INDEPENDENT_SHARE * lengths[k]!)) return undefined;
    const r = pivot[k]! > 0 ? -norm : norm;
    pivot[k] = pivot[k]! - r;
    const vv = dotFrom(pivot, pivot, k);
    for (const column of [...design.slice(k + 1), target]) reflect(column, pivot, k, vv);
    diagonal.push(r);
  }
  return diagonal;
}

function reflect(column: Float64Array, vector: Float64Array, from: number, vv: number): void {
  const factor = (2 * dotFrom(vector, column, from)) / vv;
  for (let i = from; i < column.length; i++) column[i] = column[i]! - factor * vector[i]!;
}

function backSubstitute(design: readonly Float64Array[], diagonal: readonly number[], target: Numbers): number[] {
  const solution = new Array<number>(diagonal.length).fill(0);
  for (let k = diagonal.length - 1; k >= 0; k--) {
    let rest = target[k]!;
    for (let j = k + 1; j < diagonal.length; j++) rest -= design[j]![k]! * solution[j]!;
    solution[k] = rest / diagonal[k]!;
  }
  return solution;
}

/** variance · (RᵀR)⁻¹, from the columns of R⁻¹. */
function scaledInverseGram(design: readonly Float64Array[], diagonal: readonly number[], variance: number): number[][] {
  const width = diagonal.length;
  const unit = (k: number) => Array.from({ length: width }, (_, i) => Number(i === k));
  const inverse = diagonal.map((_, k) => backSubstitute(design, diagonal, unit(k)));
  const entry = (i: number, j: number) => inverse.reduce((sum, column) => sum + column[i]! * column[j]!, 0);
  return diagonal.map((_, i) => diagonal.map((__, j) => variance * entry(i, j)));
}

function undetermined(width: number, count: number): LinearFit {
  const coefficients = new Array<number>(width).fill(NaN);
  const covariance = coefficients.map(() => [...coefficients]);
  return { coefficients, covariance, residualSd: NaN, residualSquares: NaN, dof: count - width, count };
}

function dotFrom(a: Float64Array, b: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

function normFrom(values: Float64Array, from: number): number {
  return Math.sqrt(dotFrom(values, values, from));
}
