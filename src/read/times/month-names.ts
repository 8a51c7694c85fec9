/** First letters of month names, lower case without accents, in the languages that exports are met in (common practice). */
const monthStarts: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen', 'janv', 'sty', 'tam'],
  ['feb', 'fev', 'fevr', 'helmi', 'lut'],
  ['mar', 'mrz', 'maerz', 'marz', 'mrt', 'maa', 'mars'],
  ['apr', 'avr', 'abr', 'huh', 'kwi'],
  ['may', 'mai', 'mei', 'maj', 'mag', 'touko'],
  ['jun', 'juin', 'giu', 'kesa', 'cze'],
  ['jul', 'juil', 'lug', 'heina', 'lip'],
  ['aug', 'aou', 'ago', 'elo', 'sie'],
  ['sep', 'set', 'syys', 'wrz'],
  ['oct', 'okt', 'out', 'ott', 'loka', 'paz'],
  ['nov', 'marras', 'lis'],
  ['dec', 'dez', 'dic', 'des', 'joulu', 'gru'],
];

/** Month from 1 to 12 for a name or its beginning ("Sept.", "März", "déc"); NaN for any other word. Never throws. */
export function monthOfName(name: string): number {
  const word = name
    .toLowerCase()
    .normalize('NFD')
    .replace(/[^a-z]/g, '');
  if (word.length < 3) return NaN;
  let best = NaN;
  let bestLength = 0;
  monthStarts.forEach((starts, month) => {
    for (const start of starts)
      if (word.startsWith(start) && start.length > bestLength) [best, bestLength] = [month + 1, start.length];
  });
  return best;
}
