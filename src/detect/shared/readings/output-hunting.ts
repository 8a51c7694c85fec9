import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { median } from '../../../maths/quantile.js';
import { MAD_TO_SD, SECOND_DIFFERENCE_FACTOR } from '../../../maths/spread.js';

/** Outputs are logged in whole percents, so less than this is rounding: 1 % ÷ √12 (uniform error). */
const FLOOR_PERCENT = 1 / Math.sqrt(12);

/**
 * How much the output hunts in one stretch, percent: its second differences from one place of the digest to the next,
 * which slow changes of load leave at rest. NaN where no output is logged.
 */
export function outputHuntingPercent(evidence: Evidence, zone: Zone, startMs: number, endMs: number): number {
  const { startMs: firstMs, periodMs, zones, length } = evidence.digest;
  const { outputPercent } = zones[zone.index]!;
  const from = Math.max(0, Math.floor((startMs - firstMs) / periodMs));
  const to = Math.min(length, Math.ceil((endMs - firstMs) / periodMs));
  const known = outputPercent.subarray(from, to).filter((percent) => !Number.isNaN(percent));
  if (known.length < 3) return NaN;
  const sizes = known.subarray(2).map((percent, i) => Math.abs(percent - 2 * known[i + 1]! + known[i]!));
  return Math.max(FLOOR_PERCENT, (MAD_TO_SD * median(sizes)) / SECOND_DIFFERENCE_FACTOR);
}
