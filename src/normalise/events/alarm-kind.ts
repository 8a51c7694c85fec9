import type { AlarmKind } from '../../model/alarm.js';
import { phraseTest, wordsOf } from '../../words/fold.js';
import type { AlarmWords } from './alarm-words.js';
import { faultWords } from './fault-words.js';
import { limitWords } from './limit-words.js';
import { shortWords } from './short-words.js';
import { stopWords } from './stop-words.js';

const tellingWords = [...faultWords, ...limitWords, ...stopWords];
const testOf = ({ kind, phrases }: AlarmWords) => ({ kind, holds: phraseTest(phrases) });
const telling = tellingWords.map(testOf);
const onZones = [...telling, ...shortWords.map(testOf)];

/** The ten kinds, to check words given in plant.yaml. */
export const alarmKinds: readonly AlarmKind[] = [
  ...new Set([...tellingWords, ...shortWords].map(({ kind }) => kind)),
  'other',
];

/**
 * What an alarm is about, from its words.
 *
 * @param text The message, in any of the languages of the word table.
 * @param isOnZone Whether the alarm is about a heater zone; short words such as "high" count only then.
 * @returns 'other' where no word is known. Never throws.
 */
export function alarmKind(text: string, isOnZone: boolean): AlarmKind {
  const words = wordsOf(text).join(' ');
  return (isOnZone ? onZones : telling).find(({ holds }) => holds(words))?.kind ?? 'other';
}
