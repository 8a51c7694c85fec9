import type { Numbers } from './finite.js';
import { fitLinear, residualsOf, type LinearFit } from './linear-model.js';
import { HUBER_TUNING } from './location.js';
import { median } from './quantile.js';
import { MAD_TO_SD } from './spread.js';

/** At rest once no coefficient moves by this share of its standard error. */
const MOVED_SHARE = 1e-6;

export interface RobustFit extends LinearFit {
  /** What each row counted, 0 … 1, as long as y; 1 = taken fully, NaN = row not usable. */
  readonly rowWeights: Float64Array;
}

/** Enough for any well-posed data; the weights change little after the first few rounds. */
const MOST_ROUNDS = 100;

/**
 * Linear model by iteratively reweighted least squares with Huber's weights (Huber 1981, Robust Statistics, ch. 7).
 * Residuals beyond 1.345 robust standard deviations count in proportion to their distance no more.
 * The scale is 1.4826 × median |residual|, found anew each round; `residualSd` is that scale.
 * The covariance is Huber's, with his correction K for small samples (1981, equation 6.5; the default of R `MASS::rlm`).
 * Not protected against outliers in the regressors themselves.
 *
 * @param columns, y, weights As for `fitLinear`.
 * @returns As `fitLinear`; its plain fit where that leaves nothing over or has no degree of freedom. Never throws. Cost as `fitLinear`, up to 100 times.
 */
export function fitRobust(columns: readonly Numbers[], y: Numbers, weights?: Numbers): RobustFit {
  const given = (row: number) => (weights ? weights[row]! : 1);
  const plain = fitLinear(columns, y, weights);
  let fit = plain;
  let scaled = scaledResiduals(fit, columns, y, given);
  let scale = scaleOf(scaled);
  for (let round = 0; round < MOST_ROUNDS && scale > 0; round++) {
    const current = scaled.map((residual, row) => given(row) * huberWeight(residual / scale));
    const next = fitLinear(columns, y, current);
    const isAtRest = movedLittle(fit, next);
    fit = next;
    scaled = scaledResiduals(fit, columns, y, given);
    scale = scaleOf(scaled);
    if (isAtRest) break;
  }
  const rowWeights = scaled.map((residual) => rowWeight(residual, scale));
  if (!(plain.residualSd > 0)) return { ...plain, rowWeights };
  const factor = scale > 0 ? huberVariance(scaled, scale, plain) / plain.residualSd ** 2 : 0;
  const covariance = plain.covariance.map((line) => line.map((entry) => entry * factor));
  return { ...fit, dof: plain.dof, count: plain.count, covariance, residualSd: scale, rowWeights };
}

function scaledResiduals(fit: LinearFit, columns: readonly Numbers[], y: Numbers, given: (row: number) => number) {
  return residualsOf(fit, columns, y).map((residual, row) => (given(row) > 0 ? residual * Math.sqrt(given(row)) : NaN));
}

function scaleOf(scaled: Float64Array): number {
  return MAD_TO_SD * median(scaled.map(Math.abs));
}

function rowWeight(residual: number, scale: number): number {
  if (Number.isNaN(residual) || residual === 0) return Number.isNaN(residual) ? NaN : 1;
  return huberWeight(residual / scale);
}

function huberWeight(standardised: number): number {
  return Math.min(1, HUBER_TUNING / Math.abs(standardised));
}

/** K²·[Σψ²/(n − p)] / [mean ψ′]², with ψ in the units of the residuals. */
function huberVariance(scaled: Float64Array, scale: number, { dof, count }: LinearFit): number {
  const reach = HUBER_TUNING * scale;
  let psiSquares = 0;
  let inside = 0;
  for (const residual of scaled) {
    if (Number.isNaN(residual)) continue;
    psiSquares += Math.min(Math.abs(residual), reach) ** 2;
    if (Math.abs(residual) <= reach) inside++;
  }
  const insideShare = inside / count;
  const insideVariance = (count * insideShare * (1 - insideShare)) / (count - 1);
  const correction = 1 + ((count - dof) * insideVariance) / (count * insideShare ** 2);
  return (correction ** 2 * (psiSquares / dof)) / insideShare ** 2;
}

function movedLittle(before: LinearFit, after: LinearFit): boolean {
  return after.coefficients.every((value, k) => {
    const error = Math.sqrt(before.covariance[k]![k]!);
    return !(Math.abs(value - before.coefficients[k]!) > MOVED_SHARE * error);
  });
}
