import { causes, type Cause, type Probabilities } from '../model/cause.js';
import type { TermNote } from '../model/findings.js';
import { softmax } from '../maths/log-odds.js';
import type { Strengths } from './strengths.js';
import type { Term, ZoneEvidence } from './term.js';

export interface Weighed {
  readonly probabilities: Probabilities;
  /** Terms that apply, those that move the verdict most first. */
  readonly terms: readonly TermNote[];
}

/**
 * Adds up the named terms of one zone: log-odds of a cause = prior + Σ strength × value, then all causes together are
 * scaled to sum to 1. A term that cannot be told adds nothing.
 */
export function weighZone(evidence: ZoneEvidence, terms: readonly Term[], strengths: Strengths): Weighed {
  const logOdds: Record<Cause, number> = { ...strengths.prior };
  const notes: TermNote[] = [];
  for (const term of terms) {
    const value = term.value(evidence);
    if (value === null || !(value > 0)) continue;
    const adds = scaled(strengths.terms[term.id] ?? {}, value);
    for (const cause of causes) logOdds[cause] += adds[cause] ?? 0;
    notes.push({ term: term.id, says: term.says, value, adds });
  }
  const shares = softmax(causes.map((cause) => logOdds[cause]));
  const probabilities = Object.fromEntries(causes.map((cause, i) => [cause, shares[i] ?? 0])) as Record<Cause, number>;
  return { probabilities, terms: notes.sort((a, b) => weight(b) - weight(a)) };
}

function scaled(strength: Partial<Record<Cause, number>>, value: number): Partial<Record<Cause, number>> {
  const adds: Partial<Record<Cause, number>> = {};
  for (const cause of causes) {
    const full = strength[cause];
    if (full !== undefined && full !== 0) adds[cause] = full * value;
  }
  return adds;
}

function weight(note: TermNote): number {
  return Math.max(0, ...Object.values(note.adds).map(Math.abs));
}
