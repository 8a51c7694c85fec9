import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import { zForConfidence } from './normal.js';

export interface Limits {
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
export function clopperPearson(successes: number, trials: number, confidence = 0.95): Limits {
  if (!(successes >= 0 && successes <= trials)) return { low: NaN, high: NaN };
  const tail = (1 - confidence) / 2;
  const failures = trials - successes;
  return {
    low: successes === 0 ? 0 : betaQuantile(tail, successes, failures + 1),
    high: failures === 0 ? 1 : betaQuantile(1 - tail, successes + 1, failures),
  };
}

/**
 * Wilson's score limits of a share (Wilson 1927, JASA 22:209–212): shorter than the exact ones and right on average.
 *
 * @returns 0 … 1 for no trials; NaN for numbers outside. Never throws.
 */
export function wilson(successes: number, trials: number, confidence = 0.95): Limits {
  if (!(successes >= 0 && successes <= trials)) return { low: NaN, high: NaN };
  if (trials === 0) return { low: 0, high: 1 };
  const zz = zForConfidence(confidence) ** 2;
  const centre = (successes + zz / 2) / (trials + zz);
  const reach = Math.sqrt(zz * ((successes * (trials - successes)) / trials + zz / 4)) / (trials + zz);
  return { low: Math.max(0, centre - reach), high: Math.min(1, centre + reach) };
}
