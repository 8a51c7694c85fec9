import { nearestRank } from './nearest-rank.js';

interface Sampled {
  readonly series: { readonly value: readonly number[] };
  readonly scale: number;
}

/** Zones of one plant come to rest within this of each other, in degrees of either unit (common practice). */
export const sameHall = 15;
/** Zones that stay above this never come to rest in the log, and may then differ as their set points do (a hall in °C). */
const warmestHall = 45;

/**
 * Whether columns whose names say nothing can all be temperatures of one plant: at rest they come to one hall, or all
 * of them stay hot. A humidity, a wind direction and a pressure beside a temperature share no such level.
 *
 * @param columns At least one, as sampled. Never throws.
 */
export function areOneQuantity(columns: readonly Sampled[]): boolean {
  const lows = columns.map(({ series, scale }) =>
    nearestRank(
      series.value.filter((value) => !Number.isNaN(value)).map((value) => value * scale),
      0.05,
    ),
  );
  const [lowest, highest] = [Math.min(...lows), Math.max(...lows)];
  return lowest > warmestHall || highest - lowest <= sameHall;
}
