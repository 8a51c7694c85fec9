import type { Episode, Evidence } from '../../model/detector.js';
import type { PlantDigest } from '../../model/digest.js';
import { oncePer } from './memo.js';

/** A stuck run must last this many minutes … (own choice: longer than a calm zone rests on one tenth of a degree). */
const LEAST_STUCK_MINUTES = 45;
/** … and this many times the zone's own usual long rest, so that a log in whole degrees does not count as stuck. */
const STUCK_TIMES_USUAL = 2;
/** Output that moves this much under a resting reading shows that the zone itself is not at rest (own choice). */
const MOVING_OUTPUT_PERCENT = 10;
const MOVING_SETPOINT_DEG_C = 2;

/**
 * Places of the digest whose readings say nothing of the zone's temperature: bad samples, no samples, a stuck channel.
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
    for (const run of evidence.episodes.get('stuck-run')?.[index] ?? []) if (isStuck(run)) cover(mask, digest, run);
    return mask;
  }),
);

/** Whether a run of one exact reading is a stuck channel and not a zone at rest. */
export function isStuck({ facts }: Episode): boolean {
  const leastMinutes = Math.max(LEAST_STUCK_MINUTES, STUCK_TIMES_USUAL * (facts['usualLongMinutes'] ?? 0));
  if (!((facts['durationMinutes'] ?? 0) >= leastMinutes)) return false;
  return (
    (facts['outputRangePercent'] ?? 0) >= MOVING_OUTPUT_PERCENT ||
    (facts['setpointRangeDegC'] ?? 0) >= MOVING_SETPOINT_DEG_C
  );
}

function cover(mask: Uint8Array, { startMs, periodMs }: PlantDigest, run: Episode): void {
  const from = Math.max(0, Math.floor((run.startMs - startMs) / periodMs));
  const to = Math.min(mask.length - 1, Math.floor((run.endMs - startMs) / periodMs));
  mask.fill(1, from, to + 1);
}
