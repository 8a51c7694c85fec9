import type { Evidence } from '../../../model/detector.js';
import type { PlantDigest, ZoneDigest } from '../../../model/digest.js';
import { MINUTE_MS } from '../../../model/time-units.js';
import { learnedCodesOf } from './learned-codes.js';
import { oncePer } from '../basics/memo.js';
import { stuckStretchesOf } from './stuck-stretches.js';

/** So long after a good reading the next one still tells whether the zone stayed where it was (own choice). */
const NEAR_MS = 5 * MINUTE_MS;
/** Beside a lost sample a reading may be on its way to the end of its scale or back; a zone at rest moves less (own choice). */
const AT_REST_DEG_C = 3;

/**
 * Places of the digest whose readings say nothing of the zone's temperature: no good sample, good ones beside bad ones
 * that are not where the zone was before, a stuck channel, a learned code.
 *
 * @returns Per zone one byte per place, 1 = leave out. Never throws.
 */
export const maskOf = oncePer((evidence: Evidence): readonly Uint8Array[] =>
  evidence.zones.map(({ index }) => {
    const { digest } = evidence;
    const zone = digest.zones[index]!;
    const mask = new Uint8Array(digest.length);
    let last = -Infinity;
    for (let i = 0; i < digest.length; i++) {
      const isNear = (i - last) * digest.periodMs <= NEAR_MS;
      const isUsable = zone.readingCount[i]! > 0 && (zone.badCount[i] === 0 || (isNear && isAtRest(zone, last, i)));
      if (isUsable) last = i;
      else mask[i] = 1;
    }
    for (const run of stuckStretchesOf(evidence)[index]!) if (run.verdict !== 'calm') cover(mask, digest, run);
    for (const { spans } of learnedCodesOf(evidence)[index]!) for (const span of spans) cover(mask, digest, span);
    return mask;
  }),
);

/** The good readings of a place agree with each other and with those of the place before. */
function isAtRest({ minDegC, maxDegC, meanDegC }: ZoneDigest, before: number, place: number): boolean {
  const movedDegC = Math.abs(meanDegC[place]! - meanDegC[before]!);
  return maxDegC[place]! - minDegC[place]! <= AT_REST_DEG_C && movedDegC <= AT_REST_DEG_C;
}

function cover(mask: Uint8Array, { startMs, periodMs }: PlantDigest, run: { startMs: number; endMs: number }): void {
  const from = Math.max(0, Math.floor((run.startMs - startMs) / periodMs));
  const to = Math.min(mask.length - 1, Math.floor((run.endMs - startMs) / periodMs));
  mask.fill(1, from, to + 1);
}
