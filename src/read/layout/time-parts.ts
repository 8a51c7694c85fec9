import { plainWords } from '../names/role-words.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { list } from '../../words/fold.js';

/** Columns of year, month, day and of hour, minute, second; empty where a row does not part them so. */
export interface PartColumns {
  readonly date: readonly number[];
  readonly clock: readonly number[];
}

interface Part {
  readonly low: number;
  readonly high: number;
  /** In the languages that exports are met in (common practice). */
  readonly words: readonly string[];
}

const dateParts: readonly Part[] = [
  { low: 0, high: 2100, words: list('year, yr, yyyy, jahr, annee, an, ano, anno, jaar, ar, aar, rok, vuosi, ev, yil') },
  { low: 1, high: 12, words: list('month, mon, mo, monat, mois, mes, mese, maand, maned, manad, miesiac, mesic, ay') },
  { low: 1, high: 31, words: list('day, dd, tag, jour, dia, giorno, dag, dzien, den, paiva, nap, gun') },
];
const clockParts: readonly Part[] = [
  {
    low: 0,
    high: 23,
    words: list('hour, hours, hr, hh, h, stunde, std, heure, hora, ora, uur, time, timme, godzina, godz, hodina, saat'),
  },
  {
    low: 0,
    high: 59,
    words: list('minute, minutes, min, mi, minuut, minuto, minuta, minut, minutt, minuutti, perc, dakika'),
  },
  {
    low: 0,
    high: 60,
    words: list(
      'second, seconds, sec, s, ss, sekunde, sek, seconde, segundo, secondo, sekund, sekunda, sekunti, saniye',
    ),
  },
];

/** Years of a log without names above its columns. */
const years = { low: 1990, high: 2100 };
/** A share of cells below this and the column is another (own choice). */
const leastShare = 0.95;

/** Finds columns that hold one part of the time each, by their names, or by their place where there are no names. */
export function findTimeParts(rows: readonly SampledRow[], header: readonly string[], hasNames: boolean): PartColumns {
  if (!hasNames) return byPlace(rows);
  const words = header.map(plainWords);
  const find = (part: Part): number =>
    words.findIndex((name, column) => part.words.includes(name) && isWithin(rows, column, part));
  const date = dateParts.map(find);
  const [hour = -1, minute = -1, second = -1] = clockParts.map(find);
  return {
    date: date.includes(-1) ? [] : date,
    clock: hour < 0 || minute < 0 ? [] : [hour, minute, second].filter((column) => column >= 0),
  };
}

/** Without names only the usual order, year to second from the first column on, is known. */
function byPlace(rows: readonly SampledRow[]): PartColumns {
  const all = [{ ...dateParts[0]!, ...years }, ...dateParts.slice(1), ...clockParts];
  const isAll = all.every((part, column) => isWithin(rows, column, part));
  return isAll ? { date: [0, 1, 2], clock: [3, 4, 5] } : { date: [], clock: [] };
}

/** Whole numbers of a part's range; seconds may have decimals, months names. */
function isWithin(rows: readonly SampledRow[], column: number, { low, high }: Part): boolean {
  const filled = rows.map((row) => row.cells[column]?.trim() ?? '').filter((cell) => cell !== '');
  const good = filled.filter((cell) => {
    if (high === 12 && /^\p{L}{3,}\.?$/u.test(cell)) return true;
    const isWhole = high === 60 ? /^\d{1,2}([.,]\d+)?$/ : /^\d{1,4}([.,]0+)?$/;
    const value = parseFloat(cell);
    return isWhole.test(cell) && value >= low && value <= high;
  });
  return filled.length > 0 && good.length >= leastShare * filled.length;
}
