const bars = ['▁', '▂', '▃', '▄', '▅', '▆', '▇', '█'] as const;

/**
 * A row of bars, one per place: each shows the largest value that falls into it.
 *
 * @param values null = no value; a place without any is a blank.
 * @param places Number of signs, 1 or more.
 * @returns Exactly `places` signs, fewer when there are fewer values; '' for no values. The smallest value of all is
 *   the lowest bar, the largest the highest; equal values give a middle bar.
 */
export function sparkline(values: readonly (number | null)[], places: number): string {
  const tops = largestPerPlace(values, places);
  const known = tops.filter((value) => value !== null);
  const low = Math.min(...known);
  const range = Math.max(...known) - low;
  return tops
    .map((value) => {
      if (value === null) return ' ';
      return range === 0 ? bars[3] : bars[Math.round(((value - low) / range) * (bars.length - 1))]!;
    })
    .join('');
}

/** The largest value of each of so many equal parts, in order; null where a part holds none. Fewer values give fewer parts. */
export function largestPerPlace(values: readonly (number | null)[], places: number): readonly (number | null)[] {
  const count = Math.min(places, values.length);
  return Array.from({ length: count }, (_, place) => {
    const from = Math.floor((place * values.length) / count);
    const to = Math.floor(((place + 1) * values.length) / count);
    return values
      .slice(from, to)
      .reduce((most, value) => (value !== null && (most === null || value > most) ? value : most), null);
  });
}
