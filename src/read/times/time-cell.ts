import type { TimePlace } from '../../model/log-file.js';
import { joinDateAndClock } from './time-format.js';

/** The text that a row holds for its time, put together where it is spread over several cells. */
export function timeCell(
  cells: readonly string[],
  { timeColumn, clockColumn, dateParts, clockParts }: TimePlace,
): string {
  const part = (column: number): string => cells[column]?.trim() ?? '';
  const date = dateParts.length > 0 ? dateParts.map((column) => wholeText(part(column))).join('-') : part(timeColumn);
  if (clockParts.length > 0) return joinDateAndClock(date, clockOfParts(clockParts.map(part)));
  return clockColumn < 0 ? date : joinDateAndClock(date, part(clockColumn));
}

/** All columns that hold a part of the time. */
export function columnsOfTime(place: TimePlace): ReadonlySet<number> {
  const { timeColumn, clockColumn, dayColumn = -1, dateParts, clockParts } = place;
  return new Set([timeColumn, clockColumn, dayColumn, ...dateParts, ...clockParts].filter((column) => column >= 0));
}

/** "7", "5" and "3.25" are 7:05:03.25. */
function clockOfParts([hour = '', ...rest]: readonly string[]): string {
  const twoDigits = (text: string): string => text.replace(/^\d(?!\d)/, '0$&');
  const [minute = '', second] = rest;
  const ends = second === undefined ? [wholeText(minute)] : [wholeText(minute), second];
  return [wholeText(hour), ...ends.map(twoDigits)].join(':');
}

/** A program that counts in fractions writes the year 2026 as 2026.0; the names of months may be cut short with a dot. */
function wholeText(text: string): string {
  return text.replace(/[.,]0*$/, '');
}
