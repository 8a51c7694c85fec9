import type { SymptomNote, ZoneFinding } from '../../model/findings.js';
import { symptomText, type SymptomText } from './symptom.js';

/** A fault as it is marked on the chart and listed below it. */
export interface NumberedFault {
  readonly number: number;
  readonly symptom: SymptomNote;
  readonly text: SymptomText;
}

/** More marks than this cannot be told apart on a chart of some 1,000 pixels. */
export const mostMarks = 40;

/** The weightiest symptoms up to the limit, numbered in the order of time. */
export function numberedFaults({ symptoms }: Pick<ZoneFinding, 'symptoms'>): readonly NumberedFault[] {
  const texts = symptoms.map((symptom) => ({ symptom, text: symptomText(symptom) }));
  const kept = new Set([...texts].sort((a, b) => b.text.weight - a.text.weight).slice(0, mostMarks));
  return texts
    .filter((entry) => kept.has(entry))
    .sort((a, b) => a.symptom.start.localeCompare(b.symptom.start))
    .map((entry, index) => ({ number: index + 1, ...entry }));
}
