import { secondsText } from '../text/numbers.js';
import { idWords } from '../text/words.js';

/** Words for the kinds of a single fault, as the findings name them. */
const words: Readonly<Record<string, string>> = {
  open: 'open circuit',
  short: 'bottom of the scale',
  'settled-step': 'step that stays',
  spike: 'jump out and back',
};

export function kindText(kind: string): string {
  return words[kind] ?? idWords(kind);
}

/** Only an open or a short has a length of its own; that of a step or a jump is the log's interval. */
export function lengthText(kind: string, seconds: number): string {
  if (kind !== 'open' && kind !== 'short') return '';
  return seconds > 0 ? `, ${secondsText(Math.round(seconds))}` : ', one sample';
}
