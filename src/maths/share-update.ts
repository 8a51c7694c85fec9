/**
 * Shares of a whole after counting: the mean of a Dirichlet distribution whose prior weight is so many counts and which
 * then took in the counts. Each share by itself is a Beta distribution, updated by successes and failures (Gelman,
 * Carlin, Stern, Dunson, Vehtari & Rubin, Bayesian Data Analysis, 3rd ed., sections 2.4 and 3.4).
 *
 * @param priorShares Sum to 1. @param worth Counts that the prior shares weigh as much as, above 0.
 * @param counts As many as shares, each 0 or more.
 * @returns Shares that sum to 1; the prior shares for no counts. NaN for numbers outside. Never throws.
 */
export function updatedShares(priorShares: readonly number[], worth: number, counts: readonly number[]): number[] {
  if (!(worth > 0 && counts.every((count) => count >= 0))) return priorShares.map(() => NaN);
  const total = counts.reduce((sum, count) => sum + count, 0);
  return priorShares.map((share, i) => (worth * share + (counts[i] ?? 0)) / (worth + total));
}
