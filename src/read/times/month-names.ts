import { foldText } from '../../words/fold.js';

/** First letters of month names, lower case without accents, in the languages that exports are met in (common practice). */
const monthStarts: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen', 'janv', 'sty', 'tam', 'led', 'ian', 'oca', 'янв', 'січ', 'яну', 'ιαν', 'jaan', 'saus'],
  ['feb', 'fev', 'fevr', 'helmi', 'lut', 'uno', 'sub', 'фев', 'лют', 'φεβ', 'veeb', 'vas'],
  ['mar', 'mrz', 'maerz', 'marz', 'mrt', 'maa', 'mars', 'bre', 'мар', 'бер', 'μαρ', 'kov'],
  ['apr', 'avr', 'abr', 'huh', 'kwi', 'dub', 'nis', 'апр', 'кві', 'απρ', 'bal'],
  ['may', 'mai', 'mei', 'maj', 'mag', 'touko', 'kve', 'май', 'мая', 'тра', 'μαι', 'geg'],
  [
    'jun',
    'juin',
    'giu',
    'kesa',
    'cze',
    'cerven',
    'cervna',
    'cvn',
    'iun',
    'haz',
    'июн',
    'чер',
    'юни',
    'ιουν',
    'juun',
    'birz',
  ],
  [
    'jul',
    'juil',
    'lug',
    'heina',
    'lip',
    'cervenec',
    'cervence',
    'cvc',
    'iul',
    'tem',
    'июл',
    'лип',
    'юли',
    'ιουλ',
    'juul',
    'liep',
  ],
  ['aug', 'aou', 'ago', 'elo', 'sie', 'srp', 'agu', 'авг', 'сер', 'αυγ', 'avg', 'rugp'],
  ['sep', 'set', 'syys', 'wrz', 'zar', 'eyl', 'сен', 'вер', 'септ', 'σεπ', 'sze', 'rugs'],
  ['oct', 'okt', 'out', 'ott', 'loka', 'paz', 'rij', 'eki', 'окт', 'жов', 'οκτ', 'spal'],
  ['nov', 'marras', 'lis', 'kas', 'noi', 'ноя', 'ное', 'νοε', 'lapkr'],
  ['dec', 'dez', 'dic', 'des', 'joulu', 'gru', 'pro', 'ara', 'дек', 'гру', 'δεκ', 'dets'],
];

/** Month from 1 to 12 for a name or its beginning ("Sept.", "März", "déc"); NaN for any other word. Never throws. */
export function monthOfName(name: string): number {
  const word = foldText(name).replace(/[^\p{L}]/gu, '');
  if (word.length < 3) return NaN;
  let best = NaN;
  let bestLength = 0;
  monthStarts.forEach((starts, month) => {
    for (const start of starts)
      if (word.startsWith(start) && start.length > bestLength) [best, bestLength] = [month + 1, start.length];
  });
  return best;
}
