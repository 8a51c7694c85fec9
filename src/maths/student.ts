import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';

/**
 * Quantile of Student's t, from the beta distribution: dof/(dof + t²) has Beta(dof/2, 1/2)
 * (Abramowitz & Stegun 26.7.1 with 26.5.2).
 *
 * @param share 0 to 1, not included. @param dof Degrees of freedom, above 0.
 * @returns NaN for what is outside. Never throws.
 */
export function studentQuantile(share: number, dof: number): number {
  if (!(share > 0 && share < 1 && dof > 0)) return NaN;
  if (share === 0.5) return 0;
  const tail = Math.min(share, 1 - share);
  const size = Math.sqrt(dof * (1 / betaQuantile(2 * tail, dof / 2, 0.5) - 1));
  return share > 0.5 ? size : -size;
}

/**
 * Chance that Student's t lies further from zero than `t`, to either side: the finite sums for whole degrees of freedom
 * (Abramowitz & Stegun 26.7.3 and 26.7.4). Not below 1e-15, where the sum no longer tells.
 *
 * @param dof Degrees of freedom, a whole number from 1. @returns NaN for what is outside. Never throws.
 */
export function studentTwoSided(t: number, dof: number): number {
  if (Number.isNaN(t) || !(dof >= 1) || !Number.isInteger(dof)) return NaN;
  const angle = Math.atan(Math.abs(t) / Math.sqrt(dof));
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  const isOdd = dof % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = dof === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k <= dof - 2; k += 2) {
    term *= (cosine * cosine * (k - 1)) / k;
    sum += term;
  }
  const within = isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
  return Math.max(1e-15, 1 - within);
}
