import type { AlarmKind } from '../../model/alarm.js';
import { phraseTest, wordsOf } from '../../words/fold.js';
import { alarmWords } from './alarm-words.js';

const tests = alarmWords.map(({ kind, onlyOnZone, phrases }) => ({ kind, onlyOnZone, holds: phraseTest(phrases) }));

/**
 * What an alarm is about, from its words.
 *
 * @param text The message, in any of the languages of the word table.
 * @param isOnZone Whether the alarm is about a heater zone; short words such as "high" count only then.
 * @returns 'other' where no word is known. Never throws.
 */
export function alarmKind(text: string, isOnZone: boolean): AlarmKind {
  const words = wordsOf(text).join(' ');
  return tests.find(({ onlyOnZone, holds }) => (isOnZone || !onlyOnZone) && holds(words))?.kind ?? 'other';
}
