import type { SymptomNote } from '../../model/findings.js';
import type { Phrase } from '../text/phrase.js';

/** What detectors of one kind have in common for a reader: how to recognise them and how to say what they saw. */
export interface Family {
  readonly id: string;
  /** True for the detectors it speaks for. */
  readonly has: (detector: string) => boolean;
  /** How much a reader wants it as the reason of a verdict: higher comes first. */
  readonly weight: number;
  /** False for comparisons and sums, which have no place of their own on the trace. */
  readonly isOnTrace: boolean;
  /** One sentence without a full stop, without times; and the facts that it has used up. */
  readonly say: (symptom: SymptomNote) => { readonly says: Phrase; readonly used: readonly string[] };
}

/** The first of several names a fact may have; NaN when none is there. */
export function factOf(symptom: SymptomNote, ...names: readonly string[]): number {
  for (const name of names) {
    const value = symptom.facts[name];
    if (value !== undefined && Number.isFinite(value)) return value;
  }
  return NaN;
}

/** "once", "twice", "41 times". */
export function timesText(count: number): string {
  if (count === 1) return 'once';
  return count === 2 ? 'twice' : `${count} times`;
}
