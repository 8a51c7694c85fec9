import type { TemperatureUnit } from '../../model/log-file.js';
import type { RoledSeries } from './column-roles.js';

/**
 * How people choose set points in the unit that they think in: where they choose round ones, six of ten are multiples of
 * ten, a quarter are other multiples of five, the rest are any whole degree; where they tune, any whole degree is as good
 * as another. Each number stands for so many degrees' worth of chances: one of ten is a multiple of ten, eight are others
 * (from memory, rounded).
 */
const habits = {
  round: { ten: 0.6 * 10, five: 0.25 * 10, whole: (0.15 * 10) / 8, fraction: 0.01 },
  tuned: { ten: 1, five: 1, whole: 1, fraction: 0.02 },
};
type Habit = (typeof habits)[keyof typeof habits];
/** So often the controller is set in the unit that it logs; else somebody converts (own choice). */
const setInOwnUnit = 0.85;
/** One wrong in a hundred. */
const leastOdds = 100;
/** A set point stands for a while; what is passed on a ramp is none (own choice). */
const leastShare = 0.05;

const toDegC = (degF: number): number => (degF - 32) / 1.8;
const toDegF = (degC: number): number => degC * 1.8 + 32;

/**
 * The unit of set points that are odd as they stand and round in the other unit: 302, 338 and 374 are 150, 170 and 190 °C,
 * converted. Set points that are round as they stand tell nothing: 300, 325 and 350 may be either.
 *
 * @param setpoints Of all zones of a logger, none of them with a unit of its own.
 * @returns null where the odds are below 100 to 1. Never throws.
 */
export function unitOfSetpoints(setpoints: readonly RoledSeries[]): Extract<TemperatureUnit, 'degC' | 'degF'> | null {
  const values = distinctSetpoints(setpoints);
  const step = Math.max(...setpoints.map(({ series, scale }) => scale * 10 ** -series.decimals), 0);
  const own = setInOwnUnit * likelihood(values, 0);
  // Degrees of the other unit are 1.8 times as many, or as few, so each of them is so much less likely, or more.
  const other = 1 - setInOwnUnit;
  const asDegF = own + other * 1.8 ** values.length * likelihood(values.map(toDegC), step / 3.6);
  const asDegC = own + other * 1.8 ** -values.length * likelihood(values.map(toDegF), step * 0.9);
  if (asDegF > leastOdds * asDegC) return 'degF';
  return asDegC > leastOdds * asDegF ? 'degC' : null;
}

/** Set points of several zones that are alike are one choice. */
function distinctSetpoints(setpoints: readonly RoledSeries[]): number[] {
  const values = setpoints.flatMap(({ series, scale }) => {
    const times = new Map<number, number>();
    for (const value of series.value) if (value > 0) times.set(value, (times.get(value) ?? 0) + 1);
    const usual = [...times].filter(([, count]) => count >= leastShare * series.value.length);
    return usual.map(([value]) => value * scale);
  });
  return [...new Set(values)];
}

/** Of all values together: the habit is the plant's, either one as good as the other, and not one for each zone. */
function likelihood(values: readonly number[], roundingDeg: number): number {
  const all = (habit: Habit): number => values.reduce((found, value) => found * chance(value, roundingDeg, habit), 1);
  return 0.5 * all(habits.round) + 0.5 * all(habits.tuned);
}

/** How likely people choose a set point that is known to within `roundingDeg` either way. */
function chance(value: number, roundingDeg: number, habit: Habit): number {
  const isNear = (stepDeg: number): boolean =>
    Math.abs(value - stepDeg * Math.round(value / stepDeg)) <= roundingDeg + 1e-6;
  if (isNear(10)) return habit.ten;
  if (isNear(5)) return habit.five;
  return isNear(1) ? habit.whole * Math.max(1, 2 * roundingDeg) : habit.fraction;
}
