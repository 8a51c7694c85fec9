import { foldText } from './fold.js';

/** First letters of weekdays from Monday on, longest first where one begins another; folded. From memory. */
const beginnings: readonly (readonly string[])[] = [
  ['mon', 'mo', 'man', 'lun', 'seg', 'ma'], // en, de, Scandinavian, Romance, pt, nl
  ['tue', 'di', 'tir', 'tis', 'mar', 'ter'],
  ['wed', 'mi', 'ons', 'mer', 'qua', 'wo'],
  ['thu', 'do', 'tor', 'jeu', 'jue', 'gio', 'qui'],
  ['fri', 'fr', 'fre', 'ven', 'vie', 'sex', 'vr'],
  ['sat', 'sa', 'lor', 'sab', 'sam', 'za'],
  ['sun', 'so', 'son', 'dom', 'dim', 'zo'],
];
const weekdays = new Map(beginnings.flatMap((names, i) => names.map((name) => [name, i + 1] as const)));
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
  return weekdays.get(name.slice(0, 3)) ?? weekdays.get(name.slice(0, 2));
}
