import type { Evidence } from '../../../model/detector.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';

/** Above this an output is full whatever the controller allows (common practice). */
const FULL_OUTPUT_PERCENT = 95;
/** An output that is capped stands at its cap: this near … */
const NEAR_CAP_PERCENT = 0.5;
/** … for at least this share of the time in which it is on; a free output only touches its highest (own choice). */
const LEAST_CAP_SHARE = 0.005;
/** Half power or less is no cap that a plant would live with (own choice). */
const LOWEST_CAP_PERCENT = 50;

/**
 * From which output on each zone gets all the heat it can: controllers are often set to allow less than 100 %.
 *
 * @returns By zone index, percent; never above 95. Never throws.
 */
export const fullOutputPercentOf = oncePer((evidence: Evidence): readonly number[] =>
  evidence.zones.map(({ index }) => {
    const on = evidence.digest.zones[index]!.outputPercent.filter((percent) => percent > 0);
    const highest = quantile(on, 0.999);
    const atCap = on.filter((percent) => percent >= highest - NEAR_CAP_PERCENT).length;
    const isCapped = highest >= LOWEST_CAP_PERCENT && atCap >= LEAST_CAP_SHARE * on.length;
    return isCapped ? Math.min(FULL_OUTPUT_PERCENT, highest - 2 * NEAR_CAP_PERCENT) : FULL_OUTPUT_PERCENT;
  }),
);
