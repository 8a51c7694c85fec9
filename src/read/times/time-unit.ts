import { foldText, list } from '../../words/fold.js';

/** Words for units of time, in the languages that exports are met in, folded (common practice). */
const units: readonly (readonly [number, readonly string[]])[] = [
  [
    1,
    list(
      'ms, msec, msecs, millis, millisecond, milliseconds, millisekunde, millisekunden, milliseconde, millisecondes, мс, 毫秒',
    ),
  ],
  [
    1000,
    list(`s, sec, secs, second, seconds, sek, sekunde, sekunden, seconde, secondes, seconden, segundo, segundos, secondo, secondi,
      sekund, sekunder, sekundy, sekunti, с, сек, секунды, 秒, 초`),
  ],
  [
    60_000,
    list(`min, mins, minute, minutes, minuten, minuto, minutos, minuti, minut, minuter, minutter, minuty, minuutti, мин, минуты, 分,
      分钟, 分鐘, 분`),
  ],
  [
    3_600_000,
    list(`h, hr, hrs, hour, hours, std, stunde, stunden, heure, heures, hora, horas, ora, ore, uur, uren, timer, timmar, timme,
      godz, godziny, hodiny, tunti, ч, час, часы, 小时, 小時, 時間, 시간`),
  ],
  [86_400_000, list('d, day, days, tage, jours, dias, giorni, dagen, dager, dagar, dni, 天, 일')],
];
const msOfWord = new Map(units.flatMap(([ms, words]) => words.map((word) => [word, ms] as const)));

const words = [...msOfWord.keys()].sort((a, b) => b.length - a.length).join('|');
/** Behind the name: in brackets, or apart by a slash, a comma, an underscore or a blank. */
const behindName = new RegExp(`[(（\\[_/, ](${words})(?![\\p{L}\\p{N}])`, 'u');
const alone = new RegExp(`^(?:${words})$`, 'u');

export interface TimeUnit {
  /** As the name has it, folded. */
  readonly word: string;
  readonly ms: number;
}

/** The unit of time that a column's name says: "Time (min)", "t/s", "Zeit in Stunden", "seconds"; null = none. Never throws. */
export function timeUnitOf(name: string): TimeUnit | null {
  const folded = foldText(name.trim());
  const word = alone.exec(folded)?.[0] ?? behindName.exec(folded)?.[1];
  return word === undefined ? null : { word, ms: msOfWord.get(word)! };
}
