import type { EventRole } from './column-words.js';
import { rolesOfName } from './recognise.js';

/** Rows from the first among which the names of a list's columns are looked for. */
const rowsLookedAt = 30;
/** Of fewer columns nothing certain can be said unless their names are such words and nothing else. */
const leastNames = 3;
/** A name is no sentence (own choice). */
const longestName = 40;
/** So many of the names are words of lists (own choice). */
const leastKnown = 0.6;
const clockOrDate = /\d[:./-]\d|\d{5}/u;

/**
 * The row that names the columns of a list as people keep them, whatever titles stand above it: names alone, most of them
 * words for what lists of stops, alarms or work hold, one of them a time.
 *
 * @param rows The first rows as cells.
 * @returns Its place; -1 where no row is one. Never throws.
 */
export function listHeaderAt(rows: readonly (readonly string[])[]): number {
  return rows.slice(0, rowsLookedAt).findIndex(isListHeader);
}

/** Whether a row names the columns of a list. */
export function isListHeader(cells: readonly string[]): boolean {
  if (cells.length < 2 || cells.some((cell) => clockOrDate.test(cell))) return false; // nearly every row of data
  const names = cells.map(bareName).filter((name) => name !== '');
  if (names.length < 2 || names.some((name) => name.length > longestName)) return false;
  const roles = names.map((name) => rolesOfName(name));
  const known = roles.filter((of) => of.whole.length + of.part.length > 0).length;
  const times = roles.filter((of) => isTime(of.whole)).length;
  const others = roles.filter((of) => of.whole.length > 0 && !isTime(of.whole)).length;
  if (names.length < leastNames) return times === 1 && others === 1;
  // "Date done" holds a word for a time: then more of the others must be certain.
  const areTimes = times > 0 || (others > 1 && roles.some((of) => isTime(of.part)));
  return areTimes && others > 0 && known >= leastNames && known >= leastKnown * names.length;
}

function isTime(roles: readonly EventRole[]): boolean {
  return roles.includes('time') || roles.includes('start');
}

/** "Duration (min)" without its unit. */
function bareName(cell: string): string {
  return cell.replace(/[([{].*?[)\]}]/gu, ' ').trim();
}
