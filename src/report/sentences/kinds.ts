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
