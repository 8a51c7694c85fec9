import type { Evidence } from '../../../model/detector.js';
import { readingState } from '../../../model/sample-block.js';
import type { Zone } from '../../../model/zone.js';
import { HOUR_MS } from '../../../model/time-units.js';
import { matesOf } from './mates.js';
import { oncePer } from './memo.js';

/** Less than a heat-up takes (common practice: up to half an hour). */
const LEAST_HOURS = 0.5;
/** Less than a shift … */
const SHIFT_HOURS = 8;
/** … and less than this share of what other zones of the machine have (own choice). */
const LEAST_SHARE = 0.1;

/**
 * Why nothing can be told of a zone, by zone index; null for one with readings enough. A detector that sees nothing there
 * has not looked at a healthy zone, but at none.
 */
export const tooFewReadings = oncePer((evidence: Evidence): readonly (string | null)[] => {
  const { zones, digest } = evidence;
  const hours = digest.zones.map(
    ({ readingCount }) => (readingCount.filter((count) => count > 0).length * digest.periodMs) / HOUR_MS,
  );
  const loggedHours = (digest.length * digest.periodMs) / HOUR_MS;
  return zones.map((zone) => {
    const own = hours[zone.index] ?? 0;
    const emptyHours = emptyAtEndHours(evidence, zone);
    if (own > 0 && emptyHours >= SHIFT_HOURS)
      return `Zone ${zone.name}: it has no reading in the last ${emptyHours.toFixed(1)} h of the log, so how it is now cannot be told.`;
    const most = matesOf(zones, zone).reduce((longest, { index }) => Math.max(longest, hours[index]!), own);
    const isFew = own < LEAST_HOURS || (own < SHIFT_HOURS && own < LEAST_SHARE * most);
    if (!isFew) return null;
    if (own === 0) return `Zone ${zone.name}: it has no reading in the ${loggedHours.toFixed(1)} h of the log.`;
    return `Zone ${zone.name}: it has readings in ${own.toFixed(1)} h of the ${loggedHours.toFixed(1)} h of the log, too few to tell anything.`;
  });
});

/** How long the cells of a reading have been empty when the log ends; codes and words for an open input are no empty cells. */
function emptyAtEndHours({ episodes, digest }: Evidence, zone: Zone): number {
  const run = episodes.get('open-runs')?.[zone.index]?.at(-1);
  const endMs = digest.startMs + digest.length * digest.periodMs;
  const isStanding = run !== undefined && run.facts['afterMs'] === undefined && run.endMs > endMs - 2 * digest.periodMs;
  return isStanding && run.facts['stateCode'] === readingState.blank ? (run.endMs - run.startMs) / HOUR_MS : 0;
}
