import { pairsByX, type Numbers, type Pairs } from './finite.js';
import { isVaried, resolvedSquares } from './stretch-sums.js';

export interface Hinge {
  /** x at which the level line ends and the ramp begins. */
  readonly knee: number;
  /** Range of knees that fit hardly worse (profile likelihood, 95 %). */
  readonly kneeLow: number;
  readonly kneeHigh: number;
  /** y before the knee. */
  readonly level: number;
  /** Change of y per x after the knee. */
  readonly slope: number;
  /** Standard error of the slope for this knee. */
  readonly slopeError: number;
  readonly residualSquares: number;
  readonly residualSd: number;
  /** BIC of a constant minus BIC of the hinge (two more parameters); above 0 speaks for the hinge. */
  readonly bicGain: number;
  /** Points used. */
  readonly count: number;
}

/** 95 % point of chi-square with one degree of freedom. By definition. */
const CHI_SQUARE_95 = 3.841458820694124;

/**
 * Level, then a straight ramp: y = level + slope·max(0, x − knee) by least squares over the knee as well
 * (Hudson 1966, JASA 61:1097–1129: the best knee is a data point or where two free fits meet).
 *
 * @param x, y The same length, any order; pairs with NaN or ±Infinity are skipped.
 * @returns NaN for fewer than 4 points or where x does not vary. Never throws. Cost n·log n.
 */
export function fitHinge(x: Numbers, y: Numbers): Hinge {
  const points = pairsByX(x, y);
  const count = points.x.length;
  if (count < 4 || !(points.x[count - 1]! > points.x[0]!)) return { ...noHinge, count };
  const sums = runningSums(points);
  const trials = trialKnees(points, sums).map((knee) => atKnee(knee, points, sums));
  const best = trials.reduce((least, trial) => (trial.squares < least.squares ? trial : least));
  const near = trials.filter(({ squares }) => squares <= best.squares * Math.exp(CHI_SQUARE_95 / count));
  const knees = near.map(({ knee }) => knee);
  const residualSd = Math.sqrt(best.squares / (count - 3));
  const isFlat = !isVaried(sums.flatSquares, points.y);
  const gain = isFlat ? 0 : count * Math.log(sums.flatSquares / resolvedSquares(best.squares, sums.flatSquares));
  return {
    knee: best.knee,
    kneeLow: Math.min(...extremes(knees)),
    kneeHigh: Math.max(...extremes(knees)),
    level: best.level + sums.centreY,
    slope: best.slope,
    slopeError: residualSd / Math.sqrt(best.spread),
    residualSquares: best.squares,
    residualSd,
    bicGain: gain - 2 * Math.log(count),
    count,
  };
}

const noHinge = {
  knee: NaN,
  kneeLow: NaN,
  kneeHigh: NaN,
  level: NaN,
  slope: NaN,
  slopeError: NaN,
  residualSquares: NaN,
  residualSd: NaN,
  bicGain: NaN,
};

/** Sums over the points from a rank to the end; y about its mean, x about the last point. */
interface RunningSums {
  readonly x: Float64Array;
  readonly xx: Float64Array;
  readonly y: Float64Array;
  readonly xy: Float64Array;
  readonly flatSquares: number;
  readonly centreX: number;
  readonly centreY: number;
}

function runningSums({ x, y }: Pairs): RunningSums {
  const n = x.length;
  const centreX = x[n - 1]!;
  const centreY = y.reduce((sum, value) => sum + value, 0) / n;
  const make = () => new Float64Array(n + 1);
  const sums = { x: make(), xx: make(), y: make(), xy: make() };
  let flatSquares = 0;
  for (let i = n - 1; i >= 0; i--) {
    const dx = x[i]! - centreX;
    const dy = y[i]! - centreY;
    sums.x[i] = sums.x[i + 1]! + dx;
    sums.xx[i] = sums.xx[i + 1]! + dx * dx;
    sums.y[i] = sums.y[i + 1]! + dy;
    sums.xy[i] = sums.xy[i + 1]! + dx * dy;
    flatSquares += dy * dy;
  }
  return { ...sums, flatSquares, centreX, centreY };
}

/** Every data point but the last, and where a free level and a free line on both sides of a gap meet inside it. */
function trialKnees({ x }: Pairs, sums: RunningSums): { knee: number; rank: number }[] {
  const n = x.length;
  const trials: { knee: number; rank: number }[] = [];
  for (let rank = 1; rank < n; rank++) {
    if (!(x[rank]! > x[rank - 1]!)) continue;
    trials.push({ knee: x[rank - 1]!, rank });
    const meeting = sums.centreX + meetingPoint(rank, n, sums);
    if (meeting > x[rank - 1]! && meeting < x[rank]!) trials.push({ knee: meeting, rank });
  }
  return trials;
}

function meetingPoint(rank: number, n: number, sums: RunningSums): number {
  const m = n - rank;
  const level = (sums.y[0]! - sums.y[rank]!) / rank;
  const spread = sums.xx[rank]! - sums.x[rank]! ** 2 / m;
  const slope = (sums.xy[rank]! - (sums.x[rank]! * sums.y[rank]!) / m) / spread;
  return (level - (sums.y[rank]! - slope * sums.x[rank]!) / m) / slope;
}

interface Trial {
  readonly knee: number;
  readonly level: number;
  readonly slope: number;
  /** Sum of squared deviations of the ramp from its mean. */
  readonly spread: number;
  readonly squares: number;
}

/** Least squares of y on the ramp max(0, x − knee); `rank` is the first point beyond the knee. */
function atKnee({ knee, rank }: { knee: number; rank: number }, { x }: Pairs, sums: RunningSums): Trial {
  const n = x.length;
  const m = n - rank;
  const at = knee - sums.centreX;
  const ramp = sums.x[rank]! - m * at;
  const rampSquares = sums.xx[rank]! - 2 * at * sums.x[rank]! + m * at * at;
  const rampY = sums.xy[rank]! - at * sums.y[rank]!;
  const spread = rampSquares - (ramp * ramp) / n;
  const slope = rampY / spread; // y is about its mean, so it sums to 0
  const squares = Math.max(0, sums.flatSquares - slope * rampY);
  return { knee, level: (-slope * ramp) / n, slope, spread, squares };
}

function extremes(values: readonly number[]): [number, number] {
  return values.reduce(([low, high], v) => [Math.min(low, v), Math.max(high, v)], [Infinity, -Infinity]);
}
