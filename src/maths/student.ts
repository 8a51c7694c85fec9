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
