import type { Evidence } from '../../../model/detector.js';
import type { PlantDigest } from '../../../model/digest.js';
import { learnedCodesOf } from './learned-codes.js';
import { oncePer } from '../basics/memo.js';
import { stuckStretchesOf } from './stuck-stretches.js';

/**
 * Places of the digest whose readings say nothing of the zone's temperature: bad samples, no samples, a stuck
 * channel, a learned code.
 *
 * @returns Per zone one byte per place, 1 = leave out. Never throws.
 */
export const maskOf = oncePer((evidence: Evidence): readonly Uint8Array[] =>
  evidence.zones.map(({ index }) => {
    const { digest } = evidence;
    const zone = digest.zones[index]!;
    const mask = new Uint8Array(digest.length);
    for (let i = 0; i < digest.length; i++) {
      if (zone.badCount[i]! > 0 || zone.readingCount[i] === 0) mask[i] = 1;
    }
    for (const run of stuckStretchesOf(evidence)[index]!) if (run.verdict !== 'calm') cover(mask, digest, run);
    for (const { spans } of learnedCodesOf(evidence)[index]!) for (const span of spans) cover(mask, digest, span);
    return mask;
  }),
);

function cover(mask: Uint8Array, { startMs, periodMs }: PlantDigest, run: { startMs: number; endMs: number }): void {
  const from = Math.max(0, Math.floor((run.startMs - startMs) / periodMs));
  const to = Math.min(mask.length - 1, Math.floor((run.endMs - startMs) / periodMs));
  mask.fill(1, from, to + 1);
}
