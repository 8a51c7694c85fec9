import type { Zone } from '../../model/zone.js';
import { wordsOf } from '../../words/fold.js';

/** What parts the names of several zones in one cell; words from memory. */
const between = /\s*[+,;&/]\s*|\s+(?:and|und|et|y|e|og|och|en|i|oraz)\s+/iu;
const range = /^(\D*?)(\d{1,3})\s*(?:-|–|\.\.\.?|to|bis|à|a|til|till|tot|do)\s*\D{0,12}?(\d{1,3})$/iu;
/** No machine has more zones that a list names by their first and last (own choice). */
const longestRange = 60;

/** "zones 1 and 3", "Zonen 2, 4", "Z1+Z3" within a text: a word for several, or the word before each number. */
const named =
  /(?:zones|heaters|zonen|heizzonen|zonas|strefy|soner|zoner)\s*\d{1,3}(?:\s*(?:[+,&/-]|and|und|et|y|e|og|och|en|i|to|bis)\s*\d{1,3})+|(\p{L}+) ?\d{1,3}(?:\s*(?:[+,&/]|and|und|et|y|e|og|och|en|i)\s*\1 ?\d{1,3})+/iu;

/** The part of a text that names several zones; '' where none does. */
export function severalNamed(text: string): string {
  return named.exec(text)?.[0] ?? '';
}

/**
 * The zones that one cell of a list names: "Z1+Z3", "zones 2, 4", "1-4".
 *
 * @param find The zone that a text names by itself; null = none.
 * @returns Their indices, each once; empty unless there are several and every part names one. A zone that is called so
 *   itself is one zone. Never throws.
 */
export function zonesInCell(text: string, zones: readonly Zone[], find: (part: string) => number | null): number[] {
  const key = wordsOf(text).join('');
  if (zones.some(({ name }) => wordsOf(name).join('') === key)) return [];
  const parts = text
    .split(between)
    .filter((part) => part !== '')
    .flatMap(inRange);
  const found = parts.map(find);
  const named = [...new Set(found.filter((zone) => zone !== null))];
  return parts.length > 1 && !found.includes(null) ? named : [];
}

/** "Z1-Z4" as Z1, Z2, Z3 and Z4. */
function inRange(part: string): string[] {
  const ends = range.exec(part.trim());
  const [from, to] = [Number(ends?.[2]), Number(ends?.[3])];
  if (!ends || !(to > from) || to - from > longestRange) return [part];
  return Array.from({ length: to - from + 1 }, (_, i) => `${ends[1]!}${from + i}`);
}
