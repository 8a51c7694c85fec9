import { quantile } from '../maths/quantile.js';

/** A zone that came up behind its machine less often than this has no usual lag (own choice). */
const FEWEST_LAGS = 4;
/** A fault lengthens the lags of its own time; in a log that it does not fill, the quarter of short ones is from before. */
const SHARE_BEFORE = 0.25;

/**
 * How long a zone usually comes up behind the others after its machine was cold as a whole: the slowest zone of a
 * machine is the slowest each time, and that is no fault.
 *
 * @returns By zone index, ms; none for a zone with too few to tell.
 */
export function usualLags(lags: readonly { readonly zone: number; readonly lagMs: number }[]): Map<number, number> {
  const byZone = new Map<number, number[]>();
  for (const { zone, lagMs } of lags) {
    const own = byZone.get(zone);
    if (own) own.push(Math.max(0, lagMs));
    else byZone.set(zone, [Math.max(0, lagMs)]);
  }
  const usual = [...byZone].filter(([, own]) => own.length >= FEWEST_LAGS);
  return new Map(usual.map(([zone, own]) => [zone, quantile(own, SHARE_BEFORE)]));
}
