import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';

export interface MeanTimeBetween {
  /** Exposure over events; NaN for no events. */
  readonly mean: number;
  readonly low: number;
  /** Infinity for no events. */
  readonly high: number;
}

/**
 * Mean time between events at a constant rate, watched until a given time, with chi-square limits
 * 2T/χ²(1 − α/2; 2(r + 1)) and 2T/χ²(α/2; 2r); for no events the one-sided lower limit T/(−ln α)
 * (NIST/SEMATECH e-Handbook 8.4.5.1).
 *
 * @param exposure Time watched, any unit; above 0. @param events Whole, 0 or more.
 * @param confidence 1 − α: two-sided, but one-sided for no events.
 * @returns In the unit of the exposure; all NaN for numbers outside. Never throws.
 */
export function meanTimeBetween(exposure: number, events: number, confidence = 0.9): MeanTimeBetween {
  if (!(exposure > 0 && events >= 0)) return { mean: NaN, low: NaN, high: NaN };
  const alpha = 1 - confidence;
  if (events === 0) return { mean: NaN, low: exposure / -Math.log(alpha), high: Infinity };
  return {
    mean: exposure / events,
    low: (2 * exposure) / chiSquareQuantile(1 - alpha / 2, 2 * (events + 1)),
    high: (2 * exposure) / chiSquareQuantile(alpha / 2, 2 * events),
  };
}
