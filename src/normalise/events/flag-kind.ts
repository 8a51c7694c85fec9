import type { AlarmKind } from '../../model/alarm.js';
import { phraseTest, wordsOf } from '../../words/fold.js';
import { alarmKind, alarmKinds } from './alarm-kind.js';
import { faultOfAnyKind, shortWords } from './short-words.js';

/** "HiAlm", "HH": two limits run together, or one with the word behind it (common practice of tag names). */
const glued = /\b(hi|lo|hh|ll|high|low)(?=al(?:arm|m)?\b|flt\b|fault\b)/gu;
const sensorBreak = /\b(?:sbr|brk)\b/gu;

const saysFaultOnly = phraseTest(faultOfAnyKind);
const saysSensor = phraseTest(
  shortWords.flatMap(({ kind, phrases }) => (kind === 'sensor-fault' && phrases !== faultOfAnyKind ? phrases : [])),
);

/**
 * What an alarm flag is about, from its column's name.
 *
 * @param given The kind, or words for it, from plant.yaml; goes before the name.
 * @returns 'other' for "Zone 1 Alarm" and "Zone 1 Fault", which may be the heater's. Never throws.
 */
export function flagKind(name: string, given?: string): AlarmKind {
  if (given !== undefined) return alarmKinds.find((known) => known === given) ?? alarmKind(given, true);
  const spoken = name
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .toLowerCase()
    .replaceAll('_', ' ');
  const text = spoken.replace(glued, '$1 ').replace(sensorBreak, 'break');
  const telling = alarmKind(text, false);
  if (telling !== 'other') return telling;
  const words = wordsOf(text).join(' ');
  const kind = alarmKind(text, true);
  return kind === 'sensor-fault' && saysFaultOnly(words) && !saysSensor(words) ? 'other' : kind;
}
