import { logSumExp } from '../../../maths/log-odds.js';

/** Opens on either side, and the hours in which they could have come. */
export interface MovingCounts {
  readonly runningCount: number;
  readonly stoppedCount: number;
  readonly runningHours: number;
  readonly stoppedHours: number;
}

/**
 * Rate at rest over rate in movement of what movement brings about: none (a misread running state aside) to a tenth.
 * Common practice ("only or mostly while the machine moves"), no source.
 */
const MOVING_RATIOS = [0.002, 0.02, 0.05, 0.1];
/** … and of what movement does not touch; load and vibration may double or halve it (own choice). */
const EVEN_RATIOS = [0.5, 1, 2];
/** Larger ratios say no more than "sure" and must stay finite. */
const LARGEST_RATIO = 1e6;

/**
 * How much better the counts fit opens that come evenly over running and standing hours than opens that movement brings:
 * the ratio of the likelihoods of the split of a given number of opens (binomial), each averaged over its rates.
 *
 * @param parts Independent parts of the evidence, each with opens and hours of its own.
 * @returns 1 where nothing tells, between 10⁻⁶ and 10⁶. Never throws.
 */
export function evenOverMovingRatio(parts: readonly MovingCounts[]): number {
  const apart = averageLog(parts, EVEN_RATIOS) - averageLog(parts, MOVING_RATIOS);
  if (Number.isNaN(apart)) return 1;
  return Math.min(LARGEST_RATIO, Math.max(1 / LARGEST_RATIO, Math.exp(apart)));
}

function averageLog(parts: readonly MovingCounts[], ratios: readonly number[]): number {
  const logs = ratios.map((ratio) => parts.reduce((sum, part) => sum + splitLog(part, ratio), 0));
  return logSumExp(logs) - Math.log(ratios.length);
}

function splitLog({ runningCount, stoppedCount, runningHours, stoppedHours }: MovingCounts, ratio: number): number {
  if (!(runningHours + stoppedHours > 0)) return 0;
  const stoppedShare = (ratio * stoppedHours) / (ratio * stoppedHours + runningHours);
  return countLog(stoppedCount, stoppedShare) + countLog(runningCount, 1 - stoppedShare);
}

function countLog(count: number, share: number): number {
  return count === 0 ? 0 : count * Math.log(share);
}
