import type { SymptomNote, ZoneFinding } from '../../model/findings.js';
import { symptomText, type SymptomText } from './symptom.js';

/** A symptom and its words. */
export interface SeenSign {
  readonly symptom: SymptomNote;
  readonly text: SymptomText;
}

/** A fault as it is marked on the chart and listed below it. */
export interface NumberedFault extends SeenSign {
  readonly number: number;
}

/** More marks than this cannot be told apart on a chart of some 1,000 pixels. */
const mostMarks = 40;

/** The weightiest symptoms up to the limit, numbered in the order of time. */
export function numberedFaults({ symptoms }: Pick<ZoneFinding, 'symptoms'>): readonly NumberedFault[] {
  const texts = seenSigns(symptoms).filter(({ text }) => text.isOnTrace);
  const kept = new Set([...texts].sort((a, b) => b.text.weight - a.text.weight).slice(0, mostMarks));
  return texts
    .filter((entry) => kept.has(entry))
    .sort((a, b) => a.symptom.start.localeCompare(b.symptom.start))
    .map((entry, index) => ({ number: index + 1, ...entry }));
}

/** Comparisons and sums: signs without a place of their own on the trace. */
export function otherSigns({ symptoms }: Pick<ZoneFinding, 'symptoms'>): readonly SeenSign[] {
  return seenSigns(symptoms).filter(({ text }) => !text.isOnTrace);
}

function seenSigns(symptoms: ZoneFinding['symptoms']): readonly SeenSign[] {
  return symptoms.map((symptom) => ({ symptom, text: symptomText(symptom) }));
}
