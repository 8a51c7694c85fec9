import { list, phraseTest, wordsOf } from '../../words/fold.js';

/**
 * Words of stop and maintenance lists for cleaning that may bring water to terminals. Languages as in repair-words.ts.
 * Source: common practice.
 */
const washWords = phraseTest(
  list(`wash*, hose down, hosed down, rins*, clean, cleaned, cleaning, sanitation, sanitiz*, sanitis*, cip, reinig*,
    gereinigt, abgewaschen, spul*, lavage, nettoy*, rincage, lavaggio, lavato, pulizia, pulito, lavado, limpieza, limpiado,
    lavagem, limpeza, limpo, schoonmaak*, schoongemaakt, rengor*, tvatt*, spoling, rengjor*, vask*, spyling, rengoring*,
    myci*, czyszczen*, pesu*, puhdistus*`),
);

/** Whether a line speaks of a wash-down. Never throws. */
export function isWashDown(text: string): boolean {
  return washWords(wordsOf(text).join(' '));
}
