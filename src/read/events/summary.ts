import { list, wordsOf } from '../../words/fold.js';
import { isNumber } from './cell-looks.js';

/** Above how often an alarm came (common practice, several languages). */
const countWords = new Set(
  list(`
    count, counts, number, occurrences, number of occurrences, frequency, times, qty, total count, alarm count, hits,
    anzahl, haufigkeit, nombre, nombre d'occurrences, frequence, quantita, numero, conteggio, frequenza, cantidad, veces,
    frecuencia, quantidade, vezes, frequencia, aantal, frequentie, antal, antall, frekvens, liczba, ilosc, pocet, cetnost,
    maara, lukumaara, darab, gyakorisag, adet, sayi, numar, количество, число, 次数, 回数, 횟수`).map((words) =>
    wordsOf(words).join(' '),
  ),
);
/** Above the first or last time it came, or how long it stood in all. */
const endWord =
  /(?:^| )(?:first|last|total|earliest|latest|erste[rs]?|letzte[rs]?|gesamt\p{L}*|premiere?|derniere?|prim[ao]|ultim[ao]|primer[ao]?|eerste|laatste|forste?|siste|sista|pierwsz\p{L}+|ostatni\p{L}*|prvni|posledni|ensimmainen|viimeinen|elso|utolso|ilk|son|перв\p{L}+|последн\p{L}+|最初|最後|首次|末次|最近)(?: |$)/u;

/**
 * Whether a list has one row for each alarm, with how often it came, in place of one row for each time: it says when an
 * alarm came for the first or last time only. Never throws.
 */
export function isSummary(header: readonly string[], rows: readonly (readonly string[])[]): boolean {
  const words = header.map((name) => wordsOf(name).join(' '));
  const isCount = (name: string, column: number): boolean =>
    countWords.has(name) &&
    rows.every((row) => isNumber((row[column] ?? '').trim()) || (row[column] ?? '').trim() === '');
  return words.some(isCount) && words.some((name) => endWord.test(name));
}
