import type { Numbers } from './finite.js';
import { momentsOf, sampleSd } from './moments.js';
import { studentQuantile } from './student.js';

export interface Grubbs {
  /** |value − mean| / sd of the value furthest from the mean. */
  readonly g: number;
  /** g above this is an outlier at the level asked for. */
  readonly critical: number;
  readonly isOutlier: boolean;
  /** Index of that value; −1 for fewer than 3 usable values. */
  readonly index: number;
}

/**
 * Grubbs' test for one outlier in normal data (Grubbs 1969, Technometrics 11:1–21; NIST/SEMATECH e-Handbook 1.3.5.17.1).
 *
 * @param values NaN and ±Infinity are skipped.
 * @param tail 'both' looks at the furthest value, 'high' at the largest, 'low' at the smallest.
 * @returns NaN, not an outlier, for fewer than 3 usable values or no spread. Never throws.
 */
export function grubbs(values: Numbers, tail: 'both' | 'high' | 'low' = 'both', alpha = 0.05): Grubbs {
  const moments = momentsOf(values);
  const n = moments.count;
  const sd = sampleSd(moments);
  if (n < 3 || !(sd > 0)) return { g: NaN, critical: NaN, isOutlier: false, index: -1 };
  const distance = { both: Math.abs, high: (d: number) => d, low: (d: number) => -d }[tail];
  let index = -1;
  let g = -Infinity;
  for (let i = 0; i < values.length; i++) {
    const candidate = distance(values[i]! - moments.mean) / sd;
    if (Number.isFinite(candidate) && candidate > g) [g, index] = [candidate, i];
  }
  const t = studentQuantile(1 - alpha / (tail === 'both' ? 2 * n : n), n - 2);
  const critical = ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
  return { g, critical, isOutlier: g > critical, index };
}
