import type { Evidence, Outcome, Symptom } from '../../../model/detector.js';
import type { Zone } from '../../../model/zone.js';
import { finiteFacts } from './capped-list.js';

/** What a judge says of one zone: why it cannot tell, or what it sees (an empty list for nothing). */
export type ZoneAnswer = string | readonly Symptom[];

/** One outcome per zone; a zone without any reading is answered the same way by every judge. */
export function judgeZones(
  evidence: Evidence,
  detector: string,
  judge: (zone: Zone) => ZoneAnswer,
): readonly Outcome[] {
  return evidence.zones.map((zone) => {
    const answer = hasSamples(evidence, zone) ? judge(zone) : `Zone ${zone.name}: the log holds no samples of it.`;
    if (typeof answer === 'string') return { detector, zone: zone.index, symptoms: [], unable: answer };
    return { detector, zone: zone.index, symptoms: answer };
  });
}

/** True when the digest counted at least one sample, good or bad. */
function hasSamples({ digest }: Evidence, zone: Zone): boolean {
  const held = digest.zones[zone.index];
  if (!held) return false;
  return held.readingCount.some((count) => count > 0) || held.badCount.some((count) => count > 0);
}

/** A symptom whose facts that are not finite are left out. */
export function symptomOf(
  detector: string,
  startMs: number,
  endMs: number,
  count: number,
  facts: Readonly<Record<string, number>>,
): Symptom {
  return { detector, startMs, endMs, count, facts: finiteFacts(facts) };
}

/** Start and end of the digest's grid, UTC ms. */
export function windowOf({ digest }: Evidence): { startMs: number; endMs: number } {
  return { startMs: digest.startMs, endMs: digest.startMs + digest.length * digest.periodMs };
}
