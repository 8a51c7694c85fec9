import type { TimeFormat } from '../../model/log-file.js';
import { plainDateText } from './foreign-clocks.js';
import { monthOfName } from './month-names.js';

type DateOrder = TimeFormat['order'];

export interface ParsedTime {
  /** The clock as if it were UTC; where the cell says its offset, UTC. */
  readonly ms: number;
  readonly hasOffset: boolean;
  /** Length of the date and of what parts it from the clock; the clock starts here. */
  readonly clockStart: number;
}

const dayMs = 86_400_000;
/** Also "6. 9. 2026", as Czech, Slovak, Finnish and Hungarian have it. */
const numericDate = /^(\d{1,4})(\. ?|[-/ ])(\d{1,2})\2(\d{4}|\d{1,2})(?!\d)\.?/;
const compactDate = /^(\d{4})(\d{2})(\d{2})(?=$|[T _-])/;
/** Week and day, and day of the year (ISO 8601): 2026-W10-1, 2026-061. */
const isoWeek = /^(\d{4})-?W(\d{2})-?([1-7])(?!\d)/;
const isoOrdinal = /^(\d{4})-(\d{3})(?!\d)/;
/** 20251230220000 and 202512302200: no count of seconds since 1970 has 12 or 14 digits. */
const compactBoth = /^((?:19|20)\d{6})(\d{4}|\d{6})$/;
/** Tue Dec 30 22:00:00 2025, the year last (C's asctime; the day of the week is cut off before). */
const yearLast = /^([\p{L}]{3,} +\d{1,2}) (\d{1,2}:\d{2}:\d{2}) (?:[A-Z]{3,4} )?(\d{4})$/u;
const dayMonthName =
  /^(\d{1,2})(?:st|nd|rd|th)?\.?(?:[-/ ]| de )?([\p{L}]{3,}\.?)(?:[-/., ]+|,? del? )(\d{4}|\d{2})(?!\d)/u;
/** Also "2026. szept. 2.", as Hungarian has it. */
const yearMonthName = /^(\d{4})(?:\. ?|[-/ ])([\p{L}]{3,}\.?)[-/ ](\d{1,2})(?!\d)\.?/u;
const monthNameDay = /^([\p{L}]{3,}\.?)[-/ ](\d{1,2})(?:st|nd|rd|th)?,?[-/ ]+(\d{4})(?!\d)/u;
const weekday = /^[\p{L}]{2,}\.?,? +(?=\d|[\p{L}]{3,}\.? +\d)/u;
const between = /^(?:[T_: ]|, ?)\s*(?:(?:at|um|à|alle|kl\.?) +)?/;
const clockText =
  /^(\d{1,2})[:.h](\d{2})(?:[:.m](\d{2})(?:s|[.,:](\d{1,9}))?)?\s*([ap]\.?\s?m\.?)?(?: ?(?:Uhr|hrs?))?\s*(Z|UTC|GMT|[A-Z]{3,4}|[+-]\d{2}(?::?\d{2})?)?(?:\[[^\]]*\])?$/i;
const compactClock = /^(\d{2})(\d{2})(\d{2})?(Z|[+-]\d{2}(?::?\d{2})?)?$/i;

/**
 * Reads a date with or without a clock from a cell, in any of the usual notations.
 *
 * @param text One cell; blanks around it do not matter.
 * @param order Order of day, month and year where all are numbers. A year of four digits in front wins over it.
 * @returns null when the cell is no date, or holds a day or an hour that does not exist. Never throws.
 */
export function parseDateTime(text: string, order: DateOrder): ParsedTime | null {
  const lead = text.length - text.trimStart().length;
  const trimmed = text.trim();
  const skipped = weekdayOf(trimmed).length;
  const time =
    parseFrom(trimmed, lead, order) ?? (skipped > 0 ? parseFrom(trimmed.slice(skipped), lead + skipped, order) : null);
  if (time) return time;
  const plain = plainDateText(trimmed);
  return plain === trimmed ? null : anywhere(parseFrom(plain, 0, order));
}

/** The day of the week that a time begins with, and what parts it from the date: "Mon " of "Mon 03/02/2026"; else ''. */
export function weekdayOf(text: string): string {
  return weekday.exec(text)?.[0] ?? '';
}

/** The places of a text that was written anew say nothing of the cell. */
function anywhere(time: ParsedTime | null): ParsedTime | null {
  return time && { ...time, clockStart: Infinity };
}

function parseFrom(text: string, lead: number, order: DateOrder): ParsedTime | null {
  const both = compactBoth.exec(text);
  if (both) return joined(parseDate(both[1]!, order), parseClock(both[2]!), lead + both[1]!.length);
  const last = yearLast.exec(text);
  if (last)
    return joined(parseDate(`${last[1]!} ${last[3]!}`.replace(/ +/g, ' '), order), parseClock(last[2]!), Infinity);
  const date = parseDate(text, order);
  if (!date) return null;
  const tail = text.slice(date.length);
  if (tail === '') return { ms: date.ms, hasOffset: false, clockStart: lead + date.length };
  const gap = between.exec(tail);
  if (!gap) return null;
  return joined(date, parseClock(tail.slice(gap[0].length)), lead + date.length + gap[0].length);
}

function joined(
  date: { ms: number } | null,
  clock: { ms: number; hasOffset: boolean } | null,
  clockStart: number,
): ParsedTime | null {
  return date && clock && { ms: date.ms + clock.ms, hasOffset: clock.hasOffset, clockStart };
}

function parseDate(text: string, order: DateOrder): { ms: number; length: number } | null {
  const compact = compactDate.exec(text);
  if (compact) return dated(compact[1]!, Number(compact[2]), compact[3]!, compact[0].length);
  const week = isoWeek.exec(text);
  if (week) return ofWeek(Number(week[1]), Number(week[2]), Number(week[3]), week[0].length);
  const ordinal = isoOrdinal.exec(text);
  if (ordinal) return ofYearDay(Number(ordinal[1]), Number(ordinal[2]), ordinal[0].length);
  const numeric = numericDate.exec(text);
  if (numeric) return fromNumbers(numeric[1]!, numeric[3]!, numeric[4]!, order, numeric[0].length);
  const byYear = yearMonthName.exec(text);
  if (byYear) return dated(byYear[1]!, monthOfName(byYear[2]!), byYear[3]!, byYear[0].length);
  const byDay = dayMonthName.exec(text);
  if (byDay) return dated(byDay[3]!, monthOfName(byDay[2]!), byDay[1]!, byDay[0].length);
  const byMonth = monthNameDay.exec(text);
  if (byMonth) return dated(byMonth[3]!, monthOfName(byMonth[1]!), byMonth[2]!, byMonth[0].length);
  return null;
}

function ofWeek(year: number, week: number, day: number, length: number) {
  const fourthMs = Date.UTC(year, 0, 4); // always in week 1 (ISO 8601)
  const mondayMs = fourthMs - ((new Date(fourthMs).getUTCDay() + 6) % 7) * dayMs;
  const isReal = week >= 1 && week <= 53 && day >= 1 && day <= 7;
  return isReal ? { ms: mondayMs + ((week - 1) * 7 + day - 1) * dayMs, length } : null;
}

function ofYearDay(year: number, day: number, length: number) {
  const ms = Date.UTC(year, 0, day);
  return day >= 1 && new Date(ms).getUTCFullYear() === year ? { ms, length } : null;
}

function fromNumbers(first: string, second: string, third: string, order: DateOrder, length: number) {
  if (first.length >= 3 || (order === 'ymd' && third.length < 3)) return dated(first, Number(second), third, length);
  if (order === 'mdy') return dated(third, Number(first), second, length);
  return dated(third, Number(second), first, length);
}

function dated(yearText: string, month: number, dayText: string, length: number) {
  if (yearText.length !== 4 && yearText.length !== 2) return null;
  const day = Number(dayText);
  const ms = Date.UTC(fullYear(yearText), month - 1, day);
  const date = new Date(ms);
  const isReal = month >= 1 && month <= 12 && date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
  return isReal ? { ms, length } : null;
}

/** Two-digit years as POSIX reads them: 69 to 99 are 1969 to 1999, the others 2000 to 2068. */
function fullYear(text: string): number {
  const year = Number(text);
  if (text.length === 4) return year;
  return year >= 69 ? 1900 + year : 2000 + year;
}

/**
 * Reads a clock: "18:00:00", "6:00 PM", "18.00.00", "180000", "18:00:00.123+02:00".
 *
 * @returns Milliseconds of the day (less the offset where one is given), or null. Never throws.
 */
export function parseClock(text: string): { ms: number; hasOffset: boolean } | null {
  const match = clockText.exec(text.trim());
  if (!match) return parseCompactClock(text.trim());
  const [, hourText, minute, second = '0', fraction = '', half = '', offset] = match;
  const hour = fullHour(Number(hourText), half.toLowerCase());
  const ms = clockMs(hour, Number(minute), Number(second)) + fractionMs(fraction) - offsetMs(offset);
  return Number.isNaN(ms) ? null : { ms, hasOffset: offset !== undefined };
}

/** A spreadsheet takes the leading zero off 050000. */
function parseCompactClock(text: string) {
  const match = compactClock.exec(/^\d{5}$/.test(text) ? `0${text}` : text);
  if (!match) return null;
  const ms = clockMs(Number(match[1]), Number(match[2]), Number(match[3] ?? 0));
  return Number.isNaN(ms) ? null : { ms: ms - offsetMs(match[4]), hasOffset: match[4] !== undefined };
}

function fullHour(hour: number, half: string): number {
  if (half === '') return hour;
  if (hour < 1 || hour > 12) return NaN;
  return (hour % 12) + (half.startsWith('p') ? 12 : 0);
}

/** 24:00 is the end of a day (ISO 8601); second 60 is a leap second. */
function clockMs(hour: number, minute: number, second: number): number {
  const isReal = hour <= 24 && minute < 60 && second <= 60 && (hour < 24 || minute + second === 0);
  return isReal ? ((hour * 60 + minute) * 60 + second) * 1000 : NaN;
}

/** Whole milliseconds of a fraction of a second; what is finer is cut off. */
export function fractionMs(digits: string): number {
  return digits === '' ? 0 : Number(digits.padEnd(3, '0').slice(0, 3));
}

/**
 * Hours east of Greenwich of zones by their letters: those of the USA as RFC 5322, 4.3 has them, those of Europe by common
 * practice. Letters that mean several zones elsewhere are left out.
 */
const zoneHours: Readonly<Record<string, number>> = {
  ...{
    Z: 0,
    UTC: 0,
    GMT: 0,
    WET: 0,
    WEST: 1,
    BST: 1,
    CET: 1,
    MEZ: 1,
    CEST: 2,
    MESZ: 2,
    EET: 2,
    OEZ: 2,
    EEST: 3,
    OESZ: 3,
  },
  ...{ EST: -5, EDT: -4, CST: -6, CDT: -5, MST: -7, MDT: -6, PST: -8, PDT: -7 },
};

/** NaN for letters that are no zone. */
function offsetMs(text: string | undefined): number {
  if (!text) return 0;
  if (/^[a-z]/i.test(text)) return (zoneHours[text.toUpperCase()] ?? NaN) * 3_600_000;
  const digits = text.slice(1).replace(':', '');
  const minutes = Number(digits.slice(0, 2)) * 60 + Number(digits.slice(2, 4));
  return (text.startsWith('-') ? -1 : 1) * minutes * 60_000;
}

/** Day 0 of spreadsheets (1899-12-30, so that days after February 1900 agree), in ms from 1970. */
const spreadsheetStartMs = -25_569 * dayMs;

/** Time of a number in a format that counts, rounded to whole ms; see {@link TimeFormat}. */
export function countedTime(count: number, format: Pick<TimeFormat, 'kind' | 'unitMs' | 'gridMs' | 'startMs'>): number {
  const { gridMs = 1, startMs = 0 } = format;
  if (format.kind === 'spreadsheet-days') return Math.round((count * dayMs) / gridMs) * gridMs + spreadsheetStartMs;
  return Math.round(count * format.unitMs) + startMs;
}
