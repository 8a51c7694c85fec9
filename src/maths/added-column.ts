import type { Numbers } from './finite.js';

/** A linear model with its columns taken out of y, ready to try further columns one at a time. */
export interface PartialledOut {
  readonly basis: readonly Float64Array[];
  /** Square roots of the weights, one per row. */
  readonly roots: Float64Array;
  /** y less its projection, times the roots; the ridge rows follow behind. */
  readonly rest: Float64Array;
}

export interface AddedColumn {
  readonly coefficient: number;
  /** Σ of the squared column once the model is taken out of it; variance of the coefficient = noise²/information. */
  readonly information: number;
  /** By how much the residual sum of squares falls. */
  readonly gain: number;
}

/** A column that the ones before make up to this share of its length adds nothing. From memory, R `lm`. */
export const INDEPENDENT_SHARE = 1e-7;
/** A column that keeps this share of its length needs no second pass (Daniel, Gragg, Kaufman & Stewart 1976, 1/√2). */
const HARDLY_SHORTENED = Math.SQRT1_2;

/**
 * Takes the columns out of y by modified Gram–Schmidt (Golub & Van Loan, Matrix Computations, 5.2.8). What is left lets
 * any further column be tried at the cost of one projection (Frisch & Waugh 1933; Lovell 1963, JASA 58:993–1010).
 *
 * @param columns, y, weights Equal length, all finite; weights are inverse variances up to a factor.
 * @param ridge One number per column: an extra row with this value in that column and 0 in y (0 = no extra row).
 * @returns Never throws. Cost rows × columns².
 */
export function partialOut(
  columns: readonly Numbers[],
  y: Numbers,
  weights: Numbers,
  ridge: readonly number[] = [],
): PartialledOut {
  const length = y.length;
  const roots = new Float64Array(length);
  for (let i = 0; i < length; i++) roots[i] = Math.sqrt(weights[i]!);
  const extend = (values: Numbers, extraPlace: number, extra: number) => {
    const scaled = new Float64Array(length + columns.length);
    for (let i = 0; i < length; i++) scaled[i] = values[i]! * roots[i]!;
    if (extraPlace >= 0) scaled[length + extraPlace] = extra;
    return scaled;
  };
  const basis: Float64Array[] = [];
  for (const [k, values] of columns.entries()) {
    const column = extend(values, k, ridge[k] ?? 0);
    if (makeUnit(column, basis)) basis.push(column);
  }
  const rest = extend(y, -1, 0);
  takeOut(rest, basis);
  return { basis, roots, rest };
}

/** What `rest` would be with one more column in the model, as `partialOut` gives it, at the cost of one projection. */
export function restWithColumn({ basis, roots, rest }: PartialledOut, values: Numbers): Float64Array {
  const column = new Float64Array(rest.length);
  for (let i = 0; i < roots.length; i++) column[i] = values[i]! * roots[i]!;
  const left = rest.slice();
  if (makeUnit(column, basis)) takeOut(left, [column]);
  return left;
}

/** Takes the basis out of a column and makes it one long; false when the basis holds it already. */
function makeUnit(column: Float64Array, basis: readonly Float64Array[]): boolean {
  const before = norm(column);
  takeOut(column, basis);
  // Where little is left, rounding is large in it: twice is enough (Kahan, in Parlett 1980).
  if (norm(column) < HARDLY_SHORTENED * before) takeOut(column, basis);
  const after = norm(column);
  if (!(after > INDEPENDENT_SHARE * before)) return false;
  for (let i = 0; i < column.length; i++) column[i] = column[i]! / after;
  return true;
}

/**
 * What adding one column to the model does. NaN coefficient where the model already holds it.
 *
 * @param from Rows before this one are 0 in the column.
 */
export function addColumn({ basis, roots, rest }: PartialledOut, values: Numbers, from = 0): AddedColumn {
  const length = roots.length;
  if (weighted.length < length) weighted = new Float64Array(length);
  let before = 0;
  let common = 0;
  for (let i = from; i < length; i++) {
    const value = values[i]! * roots[i]!;
    weighted[i] = value;
    before += value * value;
    common += value * rest[i]!; // the rest has the model out of it already, so the column need not
  }
  return addedOf(common, before, squaredParts(basis, weighted, from, length));
}

/** Working room for one column times its roots: hundreds are tried in a model. */
let weighted = new Float64Array(0);

/** Sum of the squared parts of a column along the basis. Two at a time: a sum alone waits for its own last addition. */
function squaredParts(basis: readonly Float64Array[], column: Float64Array, from: number, length: number): number {
  let along = 0;
  for (let k = 0; k < basis.length; k += 2) {
    const one = basis[k]!;
    const other = basis[k + 1] ?? one;
    let onePart = 0;
    let otherPart = 0;
    for (let i = from; i < length; i++) {
      const value = column[i]!;
      onePart += one[i]! * value;
      otherPart += other[i]! * value;
    }
    along += onePart * onePart;
    if (k + 1 < basis.length) along += otherPart * otherPart;
  }
  return along;
}

/**
 * The same from sums.
 *
 * @param common Σ column·rest, weighted. @param before Σ column², weighted. @param along Σ of its squared parts along
 * the basis.
 */
export function addedOf(common: number, before: number, along: number): AddedColumn {
  const information = before - along;
  if (!(information > INDEPENDENT_SHARE * before)) return { coefficient: NaN, information: 0, gain: 0 };
  return { coefficient: common / information, information, gain: (common * common) / information };
}

/** One after the other, each from what those before have left; the part along the next one is summed up on the way. */
function takeOut(column: Float64Array, basis: readonly Float64Array[]): void {
  let along = basis.length > 0 ? dot(basis[0]!, column) : 0;
  for (let k = 0; k < basis.length; k++) {
    const unit = basis[k]!;
    const next = basis[k + 1] ?? unit;
    let alongNext = 0;
    for (let i = 0; i < column.length; i++) {
      const left = column[i]! - along * unit[i]!;
      column[i] = left;
      alongNext += next[i]! * left;
    }
    along = alongNext;
  }
}

function norm(values: Float64Array): number {
  return Math.sqrt(dot(values, values));
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
