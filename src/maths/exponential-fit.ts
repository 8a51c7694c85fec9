import { pairsByX, type Numbers, type Pairs } from './finite.js';
import { lineThrough } from './line-fit.js';
import { constantColumn, fitLinear } from './linear-model.js';
import { minimise } from './minimise.js';

export interface ExponentialFit {
  /** Where it ends up: y at t → ∞. */
  readonly final: number;
  /** y at the first point minus `final`. */
  readonly departure: number;
  /** Time constant, in the unit of t. */
  readonly tau: number;
  /** Standard errors from the curvature at the solution; NaN where not resolved. */
  readonly finalError: number;
  readonly departureError: number;
  readonly tauError: number;
  readonly residualSd: number;
  readonly residualSquares: number;
  /** False where the best time constant lies at an end of the range searched: the data do not show a decay. */
  readonly isResolved: boolean;
  /** Points used. */
  readonly count: number;
}

export interface TauRange {
  /** Default: a third of the mean spacing of the points. */
  readonly least?: number;
  /** Default: 10 times the span of the points. */
  readonly most?: number;
}

/**
 * Exponential approach y = final + departure·exp(−(t − t₀)/τ), t₀ the first point: least squares, with a search over
 * log τ and the other two solved exactly for each τ (variable projection: Golub & Pereyra 1973, SIAM J. Numer. Anal. 10:413–432).
 *
 * @param t, y The same length, any order; pairs with NaN or ±Infinity are skipped.
 * @returns NaN, not resolved, for fewer than 4 points or where t does not vary. Never throws. Cost about 90·n after sorting.
 */
export function fitExponential(t: Numbers, y: Numbers, range: TauRange = {}): ExponentialFit {
  const points = fromFirst(pairsByX(t, y));
  const count = points.x.length;
  const span = points.x[count - 1] ?? 0;
  if (count < 4 || !(span > 0)) return { ...noFit, count };
  const least = range.least ?? span / (3 * (count - 1));
  const most = range.most ?? 10 * span;
  const shape = (tau: number) => points.x.map((at) => Math.exp(-at / tau));
  const squares = (logTau: number) => lineThrough(shape(Math.exp(logTau)), points.y).residualSquares;
  const minimum = minimise(squares, Math.log(least), Math.log(most), 40);
  const tau = Math.exp(minimum.at);
  const { slope: departure, intercept: final, residualSquares } = lineThrough(shape(tau), points.y);
  const isResolved = Number.isFinite(departure) && departure !== 0 && !minimum.isAtEdge;
  const [finalError, departureError, tauError] = isResolved ? errorsOf(points, tau, departure) : [NaN, NaN, NaN];
  const residualSd = Math.sqrt(residualSquares / (count - 3));
  return {
    final,
    departure,
    tau,
    finalError,
    departureError,
    tauError,
    residualSd,
    residualSquares,
    isResolved,
    count,
  };
}

const noFit = {
  final: NaN,
  departure: NaN,
  tau: NaN,
  finalError: NaN,
  departureError: NaN,
  tauError: NaN,
  residualSd: NaN,
  residualSquares: NaN,
  isResolved: false,
};

function fromFirst({ x, y }: Pairs): Pairs {
  return { x: x.map((at) => at - x[0]!), y };
}

/** Standard errors of final, departure and tau from the model made linear at the solution. */
function errorsOf({ x, y }: Pairs, tau: number, departure: number): [number, number, number] {
  const shape = x.map((at) => Math.exp(-at / tau));
  const byTau = x.map((at, i) => (departure * at * shape[i]!) / tau ** 2);
  const { covariance } = fitLinear([constantColumn(x.length), shape, byTau], y);
  const error = (k: number) => Math.sqrt(covariance[k]![k]!);
  return [error(0), error(1), error(2)];
}
