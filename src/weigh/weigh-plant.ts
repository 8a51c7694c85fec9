import type { Probabilities } from '../model/cause.js';
import type { Outcome } from '../model/detector.js';
import type { TermNote, ZoneStatus } from '../model/findings.js';
import type { RecordShares } from '../model/history-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { ConfirmedFinding } from '../model/record.js';
import type { Zone } from '../model/zone.js';
import fitted from './strengths.json' with { type: 'json' };
import { foundCounts, recordShares, withRecord } from './record-shares.js';
import { zoneStatus } from './status.js';
import { withPlantOverrides, type Strengths } from './strengths.js';
import type { ZoneEvidence } from './term.js';
import { terms } from './terms/index.js';
import { faultSpan, type FaultSpan } from './verdict.js';
import { weighZone } from './weigh-zone.js';

/** What the weighing says of one zone. */
export interface Verdict {
  readonly zone: Zone;
  readonly evidence: ZoneEvidence;
  readonly status: ZoneStatus;
  readonly probabilities: Probabilities;
  readonly prior: Strengths['prior'];
  readonly terms: readonly TermNote[];
  readonly span: FaultSpan;
}

/** Outcomes sorted by zone and detector, as the terms read them. */
export function zoneEvidence(zones: readonly Zone[], outcomes: readonly Outcome[]): ZoneEvidence[] {
  const byZone = zones.map(() => new Map<string, Outcome>());
  for (const outcome of outcomes) byZone[outcome.zone]?.set(outcome.detector, outcome);
  const all = zones.map((zone) => ({ zone, outcomes: byZone[zone.index]!, others: [] as ZoneEvidence[] }));
  for (const evidence of all) evidence.others.push(...all.filter((other) => other !== evidence));
  return all;
}

/**
 * The fitted strengths, moved by what was found at the plant, with what plant.yaml puts in their place: the owner's
 * word comes last.
 *
 * @param zone Index of the zone that is weighed; null = the plant as a whole.
 */
export function plantStrengths(
  plant: PlantFile,
  findings: readonly ConfirmedFinding[] = [],
  zone: number | null = null,
): Strengths {
  const moved = withRecord(fitted as Strengths, foundCounts(findings, zone), plant.priorFindings);
  return withPlantOverrides(moved, plant);
}

/** The plant's shares among faults before and after its record. */
export function plantRecordShares(plant: PlantFile, findings: readonly ConfirmedFinding[]): RecordShares {
  const used = plantStrengths(plant, findings);
  return recordShares((fitted as Strengths).prior, used.prior, foundCounts(findings, null), plant);
}

/** Weighs every zone by the plant's strengths. Never throws. */
export function weighPlant(
  zones: readonly Zone[],
  outcomes: readonly Outcome[],
  plant: PlantFile,
  findings: readonly ConfirmedFinding[] = [],
): Verdict[] {
  return zoneEvidence(zones, outcomes).map((evidence) => {
    const strengths = plantStrengths(plant, findings, evidence.zone.index);
    // Of numbers that may be no temperatures, or of two zones, nothing counts for or against a fault.
    const isInDoubt = evidence.zone.isQuantityUnknown || evidence.zone.isMixed;
    const usable = isInDoubt ? [] : terms;
    const { probabilities, terms: notes } = weighZone(evidence, usable, strengths);
    const sawNothing = [...evidence.outcomes.values()].some(
      (it) => it.unable === undefined && it.symptoms.length === 0,
    );
    return {
      zone: evidence.zone,
      evidence,
      status: zoneStatus(probabilities, sawNothing),
      probabilities,
      prior: strengths.prior,
      terms: notes,
      span: faultSpan(evidence, probabilities, notes, terms),
    };
  });
}
