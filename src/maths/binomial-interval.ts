import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';

export interface ShareLimits {
  readonly low: number;
  readonly high: number;
}

/**
 * Clopper–Pearson ("exact") limits of a share (Clopper & Pearson 1934, Biometrika 26:404–413): never covers less than
 * it says, mostly more.
 *
 * @param successes 0 to trials. @param confidence Two-sided.
 * @returns 0 … 1 for no trials; NaN for numbers outside. Never throws.
 */
export function clopperPearson(successes: number, trials: number, confidence = 0.95): ShareLimits {
  if (!(successes >= 0 && successes <= trials)) return { low: NaN, high: NaN };
  const tail = (1 - confidence) / 2;
  const failures = trials - successes;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    high: failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
  };
}
