import { foldText, list } from './fold.js';

/** Names of weekdays from Monday on and how they are cut short, folded; compared whole. From memory. */
const names: readonly (readonly string[])[] = [
  'mon, monday, mo, montag, man, mandag, lun, lundi, lunes, lunedi, seg, segunda, ma, maandag',
  'tue, tues, tuesday, di, dienstag, tir, tirsdag, tis, tisdag, mar, mardi, martes, martedi, ter, terca, dinsdag',
  'wed, weds, wednesday, mi, mittwoch, ons, onsdag, mer, mercredi, mie, miercoles, mercoledi, qua, quarta, wo, woensdag',
  'thu, thur, thurs, thursday, do, donnerstag, tor, tors, torsdag, jeu, jeudi, jue, jueves, gio, giovedi, qui, quinta, donderdag',
  'fri, friday, fr, freitag, fre, fredag, ven, vendredi, vie, viernes, venerdi, sex, sexta, vr, vrijdag',
  'sat, saturday, sa, samstag, sonnabend, lor, lordag, sab, sabado, sabato, sam, samedi, za, zaterdag',
  'sun, sunday, so, sonntag, son, sondag, dom, domingo, domenica, dim, dimanche, zo, zondag',
].map(list);
const weekdays = new Map(names.flatMap((ofDay, i) => ofDay.map((name) => [name, i + 1] as const)));
const everyDay = [1, 2, 3, 4, 5, 6, 7];
const wholes: Readonly<Record<string, readonly number[]>> = {
  daily: everyDay,
  'every day': everyDay,
  all: everyDay,
  taglich: everyDay,
  weekdays: [1, 2, 3, 4, 5],
  weekend: [6, 7],
};

/**
 * The days that a text such as "mon-fri", "Mo bis Fr", "sat, sun", "1-5" or "daily" names, as numbers from Monday = 1 to
 * Sunday = 7 (ISO 8601), ascending.
 *
 * @returns null where a word of it is no day. Never throws.
 */
export function weekdaysOf(text: string): readonly number[] | null {
  const folded = foldText(text).trim();
  if (wholes[folded]) return wholes[folded];
  const ranges = folded
    .replace(/\s*[-–—]\s*|\s+(?:to|bis|til|a|au|al)\s+/gu, '-')
    .replace(/\s(?:and|und|og|et|y|e)\s/gu, ' ');
  const days = new Set<number>();
  for (const part of ranges.split(/[\s,;.+&/]+/u).filter((name) => name !== '')) {
    const ends = part.split('-').map(weekdayOf);
    const [from, to] = [ends[0], ends.at(-1)];
    if (from === undefined || to === undefined || ends.length > 2) return null;
    for (let day = from; ; day = (day % 7) + 1) {
      days.add(day);
      if (day === to) break;
    }
  }
  return days.size > 0 ? [...days].sort((a, b) => a - b) : null;
}

function weekdayOf(name: string): number | undefined {
  if (/^[1-7]$/.test(name)) return Number(name);
  return weekdays.get(name);
}
