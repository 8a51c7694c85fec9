import { constantColumn, fitLinear } from './linear-model.js';
import { gaussLegendre } from './gauss-legendre.js';
import { normalCdf, normalDensity } from './normal.js';

/** 40 nodes give more figures than any printed table for limits up to about 20 σ. */
const NODES = 40;

/**
 * Average number of values until a two-sided CUSUM of independent normal values signals, started at 0:
 * 1/ARL = 1/ARL up + 1/ARL down, each from the integral equation
 * L(u) = 1 + L(0)·Φ(k − shift − u) + ∫₀ʰ L(y)·φ(y + k − shift − u) dy
 * (Page 1954, Biometrika 41:100–115; solved on Gauss–Legendre nodes; Montgomery, Statistical Quality Control, ch. 9).
 *
 * @param k Slack, h limit, shift of the mean: all in standard deviations; h above 0.
 * @returns Values until the signal, in mean; Infinity where it is so long (above some 10⁷) that the equation cannot be
 *   solved in double precision. NaN for NaN. Never throws. Constant cost, about 1 ms.
 */
export function cusumRunLength(k: number, h: number, shift: number): number {
  return 1 / (1 / oneSidedRunLength(k, h, shift) + 1 / oneSidedRunLength(k, h, -shift));
}

/** The upward sum alone. */
function oneSidedRunLength(k: number, h: number, shift: number): number {
  const { at, weight } = gaussLegendre(NODES, 0, h);
  const starts = [0, ...at];
  const offset = k - shift;
  const unknowns = starts.map((to, column) =>
    starts.map((from, row) => {
      const chance = column === 0 ? normalCdf(offset - from) : weight[column - 1]! * normalDensity(to + offset - from);
      return Number(row === column) - chance;
    }),
  );
  const fit = fitLinear(unknowns, constantColumn(starts.length));
  const isLong = fit.count === starts.length && !(fit.coefficients[0]! > 0); // singular, yet all numbers usable
  return isLong ? Infinity : fit.coefficients[0]!;
}
