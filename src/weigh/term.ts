import type { Cause } from '../model/cause.js';
import type { Outcome, Symptom } from '../model/detector.js';
import type { Zone } from '../model/zone.js';

/** What a term may look at: one zone and what every detector said of it. */
export interface ZoneEvidence {
  readonly zone: Zone;
  /** By detector id; a detector that did not run is absent. */
  readonly outcomes: ReadonlyMap<string, Outcome>;
  /** The plant's other zones: what all of them show is not one zone's fault. */
  readonly others: readonly ZoneEvidence[];
}

/**
 * One named piece of evidence. Its value runs from 0 (does not apply) to 1 (applies fully); null means that it cannot
 * be told, and then it counts nothing. How much it adds to each cause stands in strengths.json.
 */
export interface Term {
  readonly id: string;
  /** The detector whose symptoms it reads; the fault's beginning is taken from them. */
  readonly detector: string;
  /** The sentence a reader sees beside the number. */
  readonly says: string;
  /** Causes it may speak for; the fit keeps these strengths at or above zero. */
  readonly for: readonly Cause[];
  /** Causes it may speak against; the fit keeps these strengths at or below zero. */
  readonly against: readonly Cause[];
  /**
   * Log-odds that the trade would give it before any data (common practice; 0.5 where absent): the fit starts here and
   * moves as far as the made plants show, so a sign too rare to learn from keeps its plain meaning.
   */
  readonly start?: number;
  readonly value: (evidence: ZoneEvidence) => number | null;
}

/** The symptoms of one detector; empty when it saw nothing, was unable, or did not run. */
export function symptomsOf(evidence: ZoneEvidence, detector: string): readonly Symptom[] {
  return evidence.outcomes.get(detector)?.symptoms ?? [];
}

/** True when the detector ran and could tell. */
export function couldTell(evidence: ZoneEvidence, detector: string): boolean {
  const outcome = evidence.outcomes.get(detector);
  return outcome !== undefined && outcome.unable === undefined;
}

/** One fact of a detector's first symptom; NaN when there is none. Judges give one symptom per zone unless their page says otherwise. */
export function factOf(evidence: ZoneEvidence, detector: string, fact: string): number {
  return symptomsOf(evidence, detector)[0]?.facts[fact] ?? NaN;
}

/** −log10 of a chance, at most `most`: 2 for 1 in 100. 0 when there is none. */
export function surprise(pValue: number, most = 12): number {
  return pValue >= 0 ? Math.min(most, -Math.log10(Math.max(pValue, 1e-30))) : 0;
}

/** 0 at or below `low`, 1 at or above `high`, straight between; NaN gives 0. */
export function ramp(value: number, low: number, high: number): number {
  if (!(value > low)) return 0;
  return Math.min(1, (value - low) / (high - low));
}

/** Share of the other zones that are taken to have no fault of this kind (own choice). */
const USUAL_SHARE = 2 / 3;

/**
 * How far a measure of this zone stands out of the plant's other zones: 0 when a third of them reach half of it, 1
 * when two thirds of them stay below an eighth: more zones than that seldom fail at a time. With no other zone it is 1.
 */
export function standsOut(evidence: ZoneEvidence, measure: (zone: ZoneEvidence) => number): number {
  const own = measure(evidence);
  if (!(own > 0)) return 0;
  const others = evidence.others.map((zone) => Math.max(0, measure(zone) || 0)).sort((a, b) => a - b);
  const upper = others[Math.floor(USUAL_SHARE * others.length)] ?? 0;
  return ramp(Math.log2(own / Math.max(upper, own / 64)), 1, 3);
}

/** 1 when the detector sees this zone and hardly another one, 0 when it does not, or when two in five others show it too. */
export function seenAlone(evidence: ZoneEvidence, detector: string): number {
  if (symptomsOf(evidence, detector).length === 0) return 0;
  const { others } = evidence;
  const share = others.filter((other) => symptomsOf(other, detector).length > 0).length / Math.max(1, others.length);
  return 1 - ramp(share, 0.15, 0.4);
}
