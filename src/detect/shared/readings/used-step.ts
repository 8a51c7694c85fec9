import type { Evidence } from '../../../model/detector.js';
import { quantile } from '../../../maths/quantile.js';
import { oncePer } from '../basics/memo.js';
import { resolutionDegCOf } from '../basics/sampling.js';

/** Smaller differences are rounding of the digest's own numbers. */
const ROUNDING_DEG_C = 2e-3;
/** A few smaller moves may come of units that were changed on the way (own choice). */
const SMALLEST_QUANTILE = 0.02;
/** With fewer moves in the log its written digits must do. */
const FEWEST_MOVES = 50;

/**
 * The smallest step in which each zone's reading moves, °C, by zone index. It may be many of the log's last digits: an
 * input that resolves half a degree is exported with two decimals, and a log of changes leaves out what lies within its
 * dead band. Never less than the digits.
 */
export const usedStepsDegC = oncePer((evidence: Evidence): readonly number[] =>
  evidence.zones.map((zone) => {
    const { firstDegC } = evidence.digest.zones[zone.index]!;
    const moves: number[] = [];
    let before = NaN;
    for (const degC of firstDegC) {
      if (Number.isNaN(degC)) continue;
      const move = Math.abs(degC - before);
      if (move > ROUNDING_DEG_C) moves.push(move);
      before = degC;
    }
    const digits = resolutionDegCOf(zone);
    return moves.length < FEWEST_MOVES ? digits : Math.max(digits, quantile(moves, SMALLEST_QUANTILE));
  }),
);
