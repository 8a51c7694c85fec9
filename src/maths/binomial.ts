import { exactTails, weightsFromRatios, type ExactTails } from './exact-tails.js';

/**
 * Exact binomial test: how surprising `successes` of `trials` is when each succeeds with chance `share`.
 * The two-sided p counts all outcomes no more likely than the observed one.
 *
 * @param successes 0 to trials, whole. @param trials Whole. @param share Above 0 and under 1.
 * @returns All NaN for numbers outside or not whole; all 1 for no trials. Never throws. Cost: trials.
 */
export function binomialTest(successes: number, trials: number, share = 0.5): ExactTails {
  const isCount = Number.isInteger(successes) && Number.isInteger(trials) && successes >= 0 && successes <= trials;
  const isProper = isCount && share > 0 && share < 1;
  if (!isProper) return { atMost: NaN, atLeast: NaN, twoSided: NaN };
  const logOdds = Math.log(share) - Math.log1p(-share);
  return exactTails(
    weightsFromRatios(trials + 1, (x) => Math.log((trials - x + 1) / x) + logOdds),
    successes,
  );
}
