import { normalCdf, normalDensity } from './normal.js';

/** Beyond this Φ(−z)·exp(z²/2) is taken from its series, before exp overflows. */
const SERIES_FROM = 25;

/**
 * Chance that the most likely place of a change in mean, found by least squares, lies more than `distance` values
 * beyond the true place, on the side with standard deviation `ownSd` (limit theory of Bai 1997, Review of Economics
 * and Statistics 79:551–563: the place at which a two-sided Brownian motion with drift is highest).
 * With equal sides its density is 3/2·eᵗΦ(−3√t/2) − 1/2·Φ(−√t/2), t in units of (sd/jump)² (Yao 1987, Annals of
 * Statistics 15:1321–1328); this closed form for unequal sides is derived in the same way:
 * ∫ density of (place, height) × chance that the other side stays below that height.
 *
 * @param distance In values, 0 or more. @param ownSd, otherSd Above 0. @param jump Size of the change, not 0.
 * @returns 0 … 1; the two sides together give 1 at distance 0. Never throws.
 */
export function splitTail(distance: number, ownSd: number, otherSd: number, jump: number): number {
  const own = (ownSd / jump) ** 2; // variance per value where the drift is 1/2
  const other = (otherSd / jump) ** 2;
  const root = Math.sqrt(distance);
  const a = 0.5 / Math.sqrt(own);
  const b = a + Math.sqrt(own) / other;
  const far = normalCdf(-a * root);
  const scaled = Math.exp(-0.5 * a * a * distance) * scaledUpperTail(b * root);
  const withOther = ((2 * b * Math.sqrt(own)) / (b * b - a * a)) * ((b / a) * far - scaled);
  const alone = 0.5 * ((1 / (a * a) - distance) * far + (root * normalDensity(a * root)) / a);
  return (withOther - alone) / own;
}

/**
 * Distance within which that tail falls to `share`. 0 when it is there already.
 *
 * @param share Above 0 to under 1/2. Never throws.
 */
export function splitDistance(share: number, ownSd: number, otherSd: number, jump: number): number {
  const tail = (distance: number) => splitTail(distance, ownSd, otherSd, jump);
  if (!(tail(0) > share)) return 0;
  let low = 0;
  let high = (ownSd / jump) ** 2;
  while (tail(high) > share) [low, high] = [high, 2 * high];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (tail(middle) > share) low = middle;
    else high = middle;
  }
  return high;
}

/** Φ(−z)·exp(z²/2) for z ≥ 0 (Abramowitz & Stegun 26.2.12 for large z). */
function scaledUpperTail(z: number): number {
  if (z < SERIES_FROM) return normalCdf(-z) * Math.exp(0.5 * z * z);
  const s = 1 / (z * z);
  return ((1 - s + 3 * s * s - 15 * s ** 3) / z) * normalDensity(0);
}
