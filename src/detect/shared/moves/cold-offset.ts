import type { Evidence } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { lowest } from '../../../maths/extremes.js';
import { median } from '../../../maths/quantile.js';
import { conditionsOf } from '../readings/exposure.js';
import { peersOf } from '../readings/movement.js';

/** Fewer cold periods give no offset (own choice: half an hour by the minute). */
const FEWEST_PERIODS = 30;
/** Cold = within this of the coldest the zone and its peers are in that time (own choice). */
const WITHIN_DEG_C = 3;

/**
 * A zone's reading minus the median of its peers while all of them are cold, °C: a rough offset, good enough to see
 * that a sensor was changed. Peers share the machine, so they come to the same room temperature.
 *
 * @returns NaN without peers, without heat-up in the log, or with too few cold periods in the time given.
 */
export function coldOffsetDegC(evidence: Evidence, zone: Zone, startMs: number, endMs: number): number {
  const { digest } = evidence;
  const peers = peersOf(evidence, zone);
  const { hotFromDegC } = conditionsOf(evidence)[zone.index]!;
  if (peers.length < 2 || hotFromDegC === -Infinity) return NaN;
  const first = Math.max(0, Math.ceil((startMs - digest.startMs) / digest.periodMs));
  const end = Math.min(digest.length, Math.floor((endMs - digest.startMs) / digest.periodMs));
  const differences: number[] = [];
  const levels: number[] = [];
  for (let i = first; i < end; i++) {
    const own = digest.zones[zone.index]!.meanDegC[i]!;
    if (!(own < hotFromDegC / 2)) continue;
    const others = median(peers.map((peer) => digest.zones[peer.index]!.meanDegC[i]!));
    if (Number.isNaN(others)) continue;
    differences.push(own - others);
    levels.push(others);
  }
  const coldest = lowest(levels);
  const cold = differences.filter((_, i) => levels[i]! <= coldest + WITHIN_DEG_C);
  return cold.length >= FEWEST_PERIODS ? median(cold) : NaN;
}
