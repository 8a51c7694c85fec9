import type { Cause } from '../../model/cause.js';
import type { SymptomNote } from '../../model/findings.js';
import { phrase, plain, type Phrase } from '../text/phrase.js';
import { idWords } from '../text/words.js';
import { factPhrases } from './facts.js';
import { machine } from './machine.js';
import { movement } from './movement.js';
import { offset } from './offset.js';
import { opens } from './opens.js';
import { timesText, type Ask, type Spoken } from './spoken.js';

export const spoken: ReadonlyMap<string, Spoken> = new Map(
  [...opens, ...movement, ...offset, ...machine].map((entry) => [entry.detector, entry]),
);

export interface SymptomText {
  /** What was seen, one sentence without a full stop. */
  readonly says: Phrase;
  /** The remaining facts, each as a few words. */
  readonly details: readonly Phrase[];
  readonly weight: number;
  readonly isOnTrace: boolean;
  readonly speaksFor: readonly Cause[];
}

/** A detector that has no sentence still gets its own name and all its facts, so a new one needs no change here. */
export function symptomText(symptom: SymptomNote): SymptomText {
  const entry = spoken.get(symptom.detector);
  if (!entry) return generic(symptom);
  const said: string[] = [];
  const ask: Ask = (name) => {
    said.push(name);
    return symptom.facts[name] ?? NaN;
  };
  const says = entry.say(ask, symptom);
  const { isOnTrace, speaksFor } = entry;
  const details = factPhrases(symptom.facts, said);
  return { says, details, weight: entry.weight((name) => symptom.facts[name] ?? NaN), isOnTrace, speaksFor };
}

function generic(symptom: SymptomNote): SymptomText {
  const says = plain(`${idWords(symptom.detector)}, seen ${timesText(symptom.count)}`);
  return { says, details: factPhrases(symptom.facts), weight: 30, isOnTrace: true, speaksFor: [] };
}

/** A sign that does not speak for the cause can still be the reason, but only where no other is. */
const otherCause = 60;

/** The symptoms that explain a cause best to a reader, the best first. */
export function leadingSymptoms(symptoms: readonly SymptomNote[], cause: Cause): readonly SymptomText[] {
  const rank = ({ weight, speaksFor }: SymptomText): number => weight - (speaksFor.includes(cause) ? 0 : otherCause);
  return symptoms.map(symptomText).sort((a, b) => rank(b) - rank(a));
}

/** First letter large and a full stop: a phrase as a sentence. */
export function sentence(parts: Phrase): Phrase {
  const [first, ...rest] = parts;
  if (first === undefined) return [];
  const start = typeof first === 'string' ? first.charAt(0).toUpperCase() + first.slice(1) : first;
  const end = rest.at(-1) ?? start;
  const isEnded = typeof end === 'string' && /[.!?…]$/.test(end.trimEnd());
  return phrase`${[start, ...rest]}${isEnded ? '' : '.'}`;
}
