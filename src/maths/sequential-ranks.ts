import type { Numbers } from './finite.js';
import { normalQuantile } from './normal.js';

/**
 * Normal scores of sequential ranks: each value's rank among those up to it, as a quantile of the normal distribution,
 * Φ⁻¹((rank − ½)/n). While all orders of the values are equally likely, the scores are independent and nearly standard
 * normal whatever the values' distribution, so a chart of them needs neither level nor spread to be known
 * (McDonald 1990, Naval Research Logistics 37:627–646). The first values have small scores: little is known by them.
 *
 * @param values In time order. Equal values share the middle of their ranks. NaN and ±Infinity give NaN and count for
 *   no other. @returns As long as the values. Never throws. Cost n², for up to some thousand values.
 */
export function sequentialRankScores(values: Numbers): Float64Array {
  const scores = new Float64Array(values.length).fill(NaN);
  for (let i = 0; i < values.length; i++) {
    if (!Number.isFinite(values[i]!)) continue;
    let below = 0;
    let equal = 0; // itself among them
    let count = 0;
    for (let j = 0; j <= i; j++) {
      if (!Number.isFinite(values[j]!)) continue;
      count++;
      if (values[j]! < values[i]!) below++;
      else if (values[j] === values[i]) equal++;
    }
    scores[i] = normalQuantile((below + equal / 2) / count);
  }
  return scores;
}
