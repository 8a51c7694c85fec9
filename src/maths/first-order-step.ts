import { pairsByX, type Numbers } from './finite.js';
import { lineThrough } from './line-fit.js';
import { minimise } from './minimise.js';

export interface FirstOrderStep {
  /** y before it moves. */
  readonly start: number;
  /** Final y minus start; over the size of the input step this is the gain. */
  readonly change: number;
  /** Time from the step until y starts to move, in the unit of t. */
  readonly deadTime: number;
  /** Time constant, in the unit of t. */
  readonly tau: number;
  readonly residualSd: number;
  /** False where the best values lie at an end of the range searched, or y does not move. */
  readonly isResolved: boolean;
  /** Points used. */
  readonly count: number;
}

/**
 * Answer of a first-order system with dead time to a step of its input at t = 0:
 * y = start up to the dead time, then start + change·(1 − exp(−(t − deadTime)/τ)) (textbook model, common practice).
 * Least squares: a search over the dead time, within it over log τ, the other two solved exactly.
 *
 * @param t Since the step, 0 or more; earlier pairs may be included and count as before the answer.
 * @param y As long as t; pairs with NaN or ±Infinity are skipped.
 * @returns NaN, not resolved, for fewer than 5 points or where t does not vary. Never throws.
 *   Cost about 5000·n: meant for some hundred points.
 */
export function fitFirstOrderStep(t: Numbers, y: Numbers): FirstOrderStep {
  const points = pairsByX(t, y);
  const count = points.x.length;
  const last = points.x[count - 1] ?? 0;
  if (count < 5 || !(last > Math.max(0, points.x[0]!))) return { ...noStep, count };
  const spacing = (last - points.x[0]!) / (count - 1);
  const line = (deadTime: number, tau: number) =>
    lineThrough(
      points.x.map((at) => -Math.expm1(-Math.max(0, at - deadTime) / tau)),
      points.y,
    );
  const bestTau = (deadTime: number) =>
    minimise(
      (logTau) => line(deadTime, Math.exp(logTau)).residualSquares,
      Math.log(spacing / 3),
      Math.log(10 * last),
      20,
    );
  // The dead time cannot be told when fewer than a few points follow it.
  const dead = minimise((deadTime) => bestTau(deadTime).value, 0, 0.8 * last, 24);
  const inner = bestTau(dead.at);
  const tau = Math.exp(inner.at);
  const { slope: change, intercept: start, residualSquares } = line(dead.at, tau);
  const isResolved = Number.isFinite(change) && change !== 0 && !inner.isAtEdge && dead.at < 0.79 * last;
  return {
    start,
    change,
    deadTime: dead.at,
    tau,
    residualSd: Math.sqrt(residualSquares / (count - 4)),
    isResolved,
    count,
  };
}

const noStep = { start: NaN, change: NaN, deadTime: NaN, tau: NaN, residualSd: NaN, isResolved: false };
