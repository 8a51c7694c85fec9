import type { Probabilities } from '../model/cause.js';
import type { Outcome } from '../model/detector.js';
import type { TermNote, ZoneStatus } from '../model/findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { Zone } from '../model/zone.js';
import fitted from './strengths.json' with { type: 'json' };
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

/** The fitted strengths with what plant.yaml puts in their place. */
export function plantStrengths(plant: PlantFile): Strengths {
  return withPlantOverrides(fitted as Strengths, plant);
}

/** Weighs every zone by the plant's strengths. Never throws. */
export function weighPlant(zones: readonly Zone[], outcomes: readonly Outcome[], plant: PlantFile): Verdict[] {
  const strengths = plantStrengths(plant);
  return zoneEvidence(zones, outcomes).map((evidence) => {
    // Of numbers that may be no temperatures, nothing counts for or against a fault.
    const usable = evidence.zone.isQuantityUnknown ? [] : terms;
    const { probabilities, terms: notes } = weighZone(evidence, usable, strengths);
    const couldTell = [...evidence.outcomes.values()].some(({ unable }) => unable === undefined);
    return {
      zone: evidence.zone,
      evidence,
      status: zoneStatus(probabilities, couldTell),
      probabilities,
      prior: strengths.prior,
      terms: notes,
      span: faultSpan(evidence, probabilities, notes, terms),
    };
  });
}
