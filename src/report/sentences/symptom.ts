import type { SymptomNote } from '../../model/findings.js';
import { phrase, plain, type Phrase } from '../text/phrase.js';
import { idWords } from '../text/words.js';
import { circuit, codes, openRates } from './circuit.js';
import { factPhrases } from './facts.js';
import { timesText, type Family } from './family.js';
import { alarms, heater, repair, shared } from './machine.js';
import { jumps, recording, scatter, steps, stuck } from './movement.js';
import { away, drift, duty, shorted, soakOffset, washDown } from './offset.js';

/** Asked in this order; the first that knows the detector speaks. */
export const families: readonly Family[] = [
  washDown,
  openRates,
  heater,
  shared,
  drift,
  duty,
  away,
  shorted,
  jumps,
  soakOffset,
  stuck,
  steps,
  scatter,
  recording,
  repair,
  alarms,
  codes,
  circuit,
];

export interface SymptomText {
  /** What was seen, one sentence without a full stop. */
  readonly says: Phrase;
  /** The remaining facts, each as a few words. */
  readonly details: readonly Phrase[];
  readonly weight: number;
  readonly isOnTrace: boolean;
}

/** A detector that no family knows still gets its own name and all its facts, so a new one needs no change here. */
export function symptomText(symptom: SymptomNote): SymptomText {
  const family = families.find(({ has }) => has(symptom.detector));
  if (!family) return generic(symptom);
  const { says, used } = family.say(symptom);
  return { says, details: factPhrases(symptom.facts, used), weight: family.weight, isOnTrace: family.isOnTrace };
}

function generic(symptom: SymptomNote): SymptomText {
  const says = plain(`${idWords(symptom.detector)}, seen ${timesText(symptom.count)}`);
  return { says, details: factPhrases(symptom.facts), weight: 30, isOnTrace: true };
}

/** The symptom that explains most to a reader; undefined when there is none. */
export function leadingSymptom(symptoms: readonly SymptomNote[]): SymptomText | undefined {
  let best: SymptomText | undefined;
  for (const symptom of symptoms) {
    const text = symptomText(symptom);
    if (!best || text.weight > best.weight) best = text;
  }
  return best;
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
