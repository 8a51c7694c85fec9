import type { NoValue } from '../../model/log-file.js';
import type { RoledSeries } from './column-roles.js';
import { nearestRank } from './nearest-rank.js';
import { isPower } from './unit-guess.js';

/** Recordings mark a missing value far from anything they measure: -99 … -9999, 999 … 99999, ends of 16 bits (common practice). */
const highestLowMark = -99;
const lowestHighMark = 999;
/** So often must the number stand in a sampled column, and in so many columns of other quantities (own choice). */
const fewestTimes = 3;
const fewestColumns = 3;
/** A column with fewer numbers in the sample tells nothing. */
const fewestNumbers = 10;

/**
 * The number that a wide file writes where it has no value at all. The end of a temperature input's scale can stand in
 * temperatures only; the same number in columns of other quantities – a humidity, a gas, a set point, an output – is
 * the recording's own word for "nothing here".
 *
 * @param all Every column with numbers, as sampled.
 * @param fullOutput The number that stands for full heat, which is the end of outputs while a machine heats up.
 * @returns The number and the columns to look at for it, or null. Never throws.
 */
export function findNoValue(all: readonly RoledSeries[], fullOutput: number): NoValue | null {
  const numeric = all.filter(({ series, role }) => series.numbers >= fewestNumbers && role !== 'running');
  const others = numeric.filter(({ role }) => role !== 'reading');
  const readings = numeric.filter(({ role }) => role === 'reading');
  const counts = new Map<number, number>();
  for (const it of others)
    for (const raw of loneEnds(it))
      if (it.role !== 'output' || !(raw === fullOutput || isPower(it))) counts.set(raw, (counts.get(raw) ?? 0) + 1);
  const found = [...counts].find(
    ([raw, columns]) => columns >= fewestColumns && readings.every((it) => !isWithinReach(it, raw)),
  );
  return found ? { raw: found[0], columns: others.map(({ series }) => series.index) } : null;
}

/** Numbers that can be marks, stand at an end of the column again and again, and lie apart from all the rest. */
function loneEnds(it: RoledSeries): number[] {
  const { value } = it.series;
  const ends = [Math.min(...known(value)), Math.max(...known(value))];
  return [...new Set(ends)].filter(
    (raw) =>
      (raw <= highestLowMark || raw >= lowestHighMark) &&
      value.filter((other) => other === raw).length >= fewestTimes &&
      !isWithinReach(it, raw),
  );
}

/** Whether a number lies no further from the column's other numbers than these are spread. */
function isWithinReach({ series }: RoledSeries, raw: number): boolean {
  const rest = known(series.value).filter((other) => other !== raw);
  if (rest.length === 0) return false;
  const [low, high] = [Math.min(...rest), Math.max(...rest)];
  const spread = nearestRank(rest, 0.95) - nearestRank(rest, 0.05);
  return raw > low - spread && raw < high + spread;
}

function known(values: readonly number[]): number[] {
  return values.filter((value) => !Number.isNaN(value));
}
