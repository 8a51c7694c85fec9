import { finitePairs, type Numbers } from './finite.js';

export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** Standard errors; NaN for fewer than 3 points. */
  readonly slopeError: number;
  readonly interceptError: number;
  /** √(residual sum of squares / (count − 2)); NaN for fewer than 3 points. */
  readonly residualSd: number;
  /** Residual sum of squares. */
  readonly residualSquares: number;
  /** 1 − residual / total sum of squares; NaN where y does not vary. */
  readonly rSquared: number;
  /** Pairs used. */
  readonly count: number;
}

/**
 * Ordinary least squares line y = intercept + slope·x, from sums about the means (keeps its figures where the raw
 * sums would cancel). Draper & Smith, Applied Regression Analysis, chapter 1.
 *
 * @param x, y The same length; pairs with NaN or ±Infinity are skipped.
 * @returns NaN slope for fewer than 2 pairs or where x does not vary. Never throws.
 */
export function fitLine(x: Numbers, y: Numbers): LineFit {
  const pairs = finitePairs(x, y);
  return lineThrough(pairs.x, pairs.y);
}

/** As `fitLine`, for pairs that are all usable already: what a search calls thousands of times. */
export function lineThrough(x: Float64Array, y: Float64Array): LineFit {
  const count = x.length;
  const meanX = meanOf(x);
  const meanY = meanOf(y);
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let i = 0; i < count; i++) {
    const dx = x[i]! - meanX;
    const dy = y[i]! - meanY;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  const slope = xx > 0 ? xy / xx : NaN;
  let residualSquares = 0;
  for (let i = 0; i < count; i++) residualSquares += (y[i]! - meanY - slope * (x[i]! - meanX)) ** 2;
  const residualSd = count > 2 ? Math.sqrt(residualSquares / (count - 2)) : NaN;
  return {
    slope,
    intercept: meanY - slope * meanX,
    slopeError: residualSd / Math.sqrt(xx),
    interceptError: residualSd * Math.sqrt(1 / count + (meanX * meanX) / xx),
    residualSd,
    residualSquares,
    rSquared: yy > 0 ? 1 - residualSquares / yy : NaN,
    count,
  };
}

function meanOf(values: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum / values.length;
}
