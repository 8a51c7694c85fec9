import type { TemperatureUnit } from '../../model/log-file.js';
import type { RoledSeries } from './column-roles.js';
import { sameHall } from './one-quantity.js';
import { nearestRank } from './nearest-rank.js';
import { unitOfSetpoints } from './setpoint-unit.js';

export interface UnitFinding {
  readonly unit: TemperatureUnit;
  readonly why: string;
  /** True when nothing in the log tells; the unit is then an assumption to be confirmed. */
  readonly isAssumed: boolean;
}

/** End-of-scale values that are round in one unit only: 850, 870 and -200 °C are 1562, 1598 and -328 °F (arithmetic). */
const fahrenheitCodes = new Set([1562, 1598, -328]);
/** And such that are round in °C only, far above all else that is read: 850 and 870 °C, the ends of Pt100 ranges (IEC 60751 and common practice). */
const celsiusCodes = new Set([850, 870]);
/** A reading that far above the usual ones is an end of scale, and no heat (own choice). */
const codeOverUsual = 1.5;
/** So many times such a value must stand in the sample (own choice). */
const fewestCodes = 3;
/** Coldest readings of a plant that stands: a hall in °C, and the same hall in °F (common practice). */
const hallDegC = { low: 5, high: 45 };
const hallDegF = { low: 50, high: 105 };
/** A cold morning in it (common practice). */
const marginDegF = 10;

/**
 * Guesses the unit from the readings of a file whose names say nothing: at rest all zones come to the temperature of
 * the hall, and 70 is no hall in °C. Outer values are left out of the judgement, because they may be codes. Where the log
 * never comes to rest, set points that are round in the other unit only tell.
 */
export function guessUnit(readings: readonly RoledSeries[], setpoints: readonly RoledSeries[]): UnitFinding {
  const lows = readings.map((it) => nearestRank(plausible(it), 0.05)).filter((low) => !Number.isNaN(low));
  const low = nearestRank(lows, 0.5);
  const text = `the coldest readings lie near ${Math.round(low * 10) / 10}`;
  if (low >= hallDegC.low && low <= hallDegC.high)
    return { unit: 'degC', why: `${text}, which is a hall in °C`, isAssumed: false };
  const together = coldTogether(readings);
  if (!Number.isNaN(together))
    return {
      unit: 'degC',
      why: `all zones lie near ${Math.round(together * 10) / 10} at the same time, which is a hall in °C`,
      isAssumed: false,
    };
  const hasCode = readings.some((it) => it.series.value.some((value) => fahrenheitCodes.has(value * it.scale)));
  if (hasCode)
    return { unit: 'degF', why: 'the log holds an end-of-scale value that is round only in °F', isAssumed: false };
  if (readings.some(holdsCelsiusCode))
    return { unit: 'degC', why: 'the log holds an end-of-scale value that is round only in °C', isAssumed: false };
  const apart = nearestRank(lows, 0.9) - nearestRank(lows, 0.1);
  const coldest = nearestRank(
    readings.map((it) => nearestRank(plausible(it), 0.01)).filter((value) => !Number.isNaN(value)),
    0.5,
  );
  // A plant that heats up in °C passes 67, too, but it comes from a hall that would be freezing in °F.
  const isHallDegF = coldest >= hallDegF.low - marginDegF;
  if (low >= hallDegF.low && low <= hallDegF.high && apart < 20 && isHallDegF)
    return {
      unit: 'degF',
      why: `${text} on all zones, which is a hall in °F and too hot for one in °C`,
      isAssumed: lows.length < 2,
    };
  const unit = unitOfSetpoints(setpoints);
  if (unit)
    return {
      unit,
      why: `the set points are round in °${unit === 'degF' ? 'C' : 'F'} only, so they were converted to °${unit === 'degF' ? 'F' : 'C'}`,
      isAssumed: false,
    };
  return {
    unit: 'degC',
    why: 'nothing in the log says °C or °F, and it never comes to the temperature of the hall',
    isAssumed: true,
  };
}

/** So many rows in which all zones are cold are no chance (own choice). */
const fewestColdRows = 5;

/**
 * Where all zones lie at the temperature of a hall in °C together, as a machine does before it is heated up; in °F that
 * would be frost. A code stands on one zone, or on all to the last digit.
 *
 * @returns The middle of such rows; NaN where there are fewer than five, or less than two zones of one length.
 */
function coldTogether(readings: readonly RoledSeries[]): number {
  const { length } = readings[0]?.series.value ?? [];
  if (readings.length < 2 || readings.some(({ series }) => series.value.length !== length)) return NaN;
  const cold: number[] = [];
  for (let row = 0; row < (length ?? 0); row++) {
    const values = readings.map(({ series, scale }) => series.value[row]! * scale);
    const [low, high] = [Math.min(...values), Math.max(...values)];
    if (low >= hallDegC.low && high <= hallDegC.high && high > low && high - low <= sameHall) cold.push(low);
  }
  return cold.length < fewestColdRows ? NaN : nearestRank(cold, 0.5);
}

function holdsCelsiusCode(it: RoledSeries): boolean {
  const high = nearestRank(plausible(it), 0.95) * codeOverUsual;
  const codes = it.series.value.filter((value) => celsiusCodes.has(value * it.scale) && value * it.scale > high);
  return codes.length >= fewestCodes;
}

function plausible({ series, scale }: RoledSeries): number[] {
  return series.value.map((value) => value * scale).filter((value) => value > -40 && value < 840 && value !== 0);
}

/** No heater zone on a platinum sensor goes beyond 850 °C (IEC 60751); hotter numbers are parts of a degree. */
const hottest = { degC: 900, degF: 1652, K: 1173 };

/** A room seldom has less than this many degrees: a machine that reads less, cold, is logged in larger parts (own choice). */
const coldRoom = 10;

/** Parts of a degree that controllers count in whole numbers, the largest first (common practice). */
const partsOfDegree = [0.1, 0.01];

/** 0.1 or 0.01 where a file's temperatures are whole numbers that only make sense as tenths or hundredths of a degree, else 1. */
export function guessScale(series: readonly RoledSeries[]): number {
  const scale = scaleOfHot(series);
  return scale !== 1 && middleOf(series, 0.05) * scale >= coldRoom ? scale : 1;
}

/**
 * The same for readings beside set points of the scale that was found: 1498 beside a set point of 1500 is in tenths, too,
 * in however cold a hall.
 */
export function guessReadingScale(readings: readonly RoledSeries[], setpointScale: number): number {
  return setpointScale !== 1 && scaleOfHot(readings) !== 1 ? setpointScale : guessScale(readings);
}

/**
 * Of whole numbers that would be hotter than any zone, the largest part of a degree with which they are not; else 1. A log
 * of one shift a day is mostly cold, and of what was sampled of it a few rows in a hundred are hot; the middle over all
 * columns keeps out codes, which hardly all of them hold.
 */
function scaleOfHot(series: readonly RoledSeries[]): number {
  const areWhole = series.every((it) => it.series.decimals === 0 && it.scale === 1);
  if (series.length === 0 || !areWhole) return 1;
  const limit = hottest[series.find(({ unit }) => unit)?.unit ?? 'degC'];
  const high = middleOf(series, 0.99);
  if (!(high >= limit)) return 1;
  const part = partsOfDegree.find((it) => high * it < limit) ?? 1;
  return part === 0.01 && !areSeenMoving(series, limit * 10) ? 0.1 : part;
}

/** A reading that is hot even as tenths is a code, or moves; one value of it is a code (own choice). Set points hold none. */
const fewestLevels = 5;

function areSeenMoving(series: readonly RoledSeries[], above: number): boolean {
  return series.some(
    ({ role, series: { value } }) =>
      role === 'setpoint' || new Set(value.filter((it) => it >= above && it < codesAbove)).size >= fewestLevels,
  );
}

/** Ends of 16 bits stand here (arithmetic). */
const codesAbove = 32_000;

/** The middle over all columns of a share of their numbers. */
function middleOf(series: readonly RoledSeries[], share: number): number {
  const numbers = series.map((it) => it.series.value.filter((value) => value > 0 && value < codesAbove));
  const ranks = numbers.map((values) => nearestRank(values, share)).filter((value) => !Number.isNaN(value));
  return nearestRank(ranks, 0.5);
}

/** Ends of counters that control an output: of 8, 10, 12, 15 and 16 bits (arithmetic). */
const counterEnds = [255, 1023, 4095, 32_767, 65_535];
/** So often must a column stand at such an end (own choice). */
const fewestAtEnd = 3;

/** Factor that makes a file's outputs run from 0 to 100. */
export function guessOutputScale(outputs: readonly RoledSeries[]): number {
  const values = outputs.flatMap((it) => it.series.value.filter((value) => !Number.isNaN(value)));
  const high = values.reduce((a, b) => Math.max(a, b), 0);
  if (high <= 0) return 1;
  if (high <= 1.0001) return 100;
  if (high <= 150 || outputs.some((it) => it.series.decimals > 0)) return 1;
  if (counterEnds.includes(high) && values.filter((value) => value === high).length >= fewestAtEnd) return 100 / high;
  if (high <= 1000) return 0.1;
  return high <= 10_000 ? 0.01 : 1;
}

/** A live zero and its span: analogue current signals run from 4 to 20 mA (IEC 60381-1). */
const currentSignal = { zero: 4, scale: 100 / 16 };
/** Below and above it a transmitter shows a fault (NAMUR NE 43, from memory). */
const currentLimits = { low: 3.5, high: 21.5 };

/** How an output that is logged as a current in mA runs from 0 to 100; null where its name or its numbers say otherwise. */
export function currentOutput({ series }: RoledSeries): { zero: number; scale: number } | null {
  if (!/(?:^|[^\p{L}])mA\W*$/u.test(`${series.name} ${series.unitText}`)) return null;
  const values = series.value.filter((value) => !Number.isNaN(value));
  const isLive = values.every((value) => value >= currentLimits.low && value <= currentLimits.high);
  return values.length > 0 && isLive ? currentSignal : null;
}

const watts = /(?:^|[^\p{L}])k?W\W*$/u;

/** Whether an output is logged in watts or kilowatts, by its name or its row of units. */
export function isPower({ series }: RoledSeries): boolean {
  return watts.test(`${series.name} ${series.unitText}`);
}

/** How an output in watts runs from 0 to 100: the largest power seen is taken for the full one. Null for any other output. */
export function powerOutput(it: RoledSeries): { scale: number } | null {
  const high = it.series.value.reduce((a, b) => (b > a ? b : a), 0);
  return isPower(it) && high > 0 ? { scale: 100 / high } : null;
}

/** The machine runs above this: half for flags, a twentieth of the usual speed for speeds (common practice: creep is no run). */
export function guessRunningAbove({ series }: RoledSeries): number {
  const values = series.value.filter((value) => !Number.isNaN(value));
  const high = nearestRank(values, 0.95);
  return high > 20 || series.decimals > 0 ? 0.05 * Math.max(high, 0) : 0.5;
}
