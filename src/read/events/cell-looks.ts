import { parseClock, parseDateTime } from '../times/time-text.js';
import { parseDurationMs } from './duration.js';
import { eventState } from './state-words.js';

/** What the cells of one column look like, as shares of the cells that hold anything. */
export interface ColumnLook {
  readonly filled: number;
  readonly moment: number;
  readonly dateOnly: number;
  readonly clockOnly: number;
  readonly span: number;
  readonly number: number;
  readonly state: number;
  /** Of the states those that say it is over, or not there. */
  readonly gone: number;
  /** Of digits alone, two to five different ones: numbers that stand for states. */
  readonly isFewCodes: boolean;
  /** Plus signs alone; a minus beside them counts as nothing. */
  readonly isPlus: boolean;
  /** 1 and 0, yes and no. */
  readonly flag: number;
  readonly words: number;
  readonly distinct: number;
}

const dayPart = String.raw`(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/. ](?:\d{1,2}|[\p{L}]{3,9}\.?)[-/. ,]+\d{2,4}|\p{L}{3,9}\.? \d{1,2},? \d{4}|\d{8})`;
const clockPart = String.raw`\d{1,2}[:.hH]\d{2}(?:[:.]\d{2})?(?:[.,]\d+)?\s*(?:[ap]\.?m\.?)?\s*(?:Z|UTC|[+-]\d{2}:?\d{2})?`;
const momentPattern = new RegExp(`^${dayPart}[T ,_-]+${clockPart}$`, 'iu');
/** Without marks, as ISO 8601 allows: 20260724T002946. */
const compactMoment = /^\d{8}T\d{4}(?:\d{2})?(?:Z|[+-]\d{2}:?\d{2})?$/iu;
const dayPattern = new RegExp(`^${dayPart}$`, 'iu');
const clockPattern = new RegExp(`^${clockPart}$`, 'iu');
const numberPattern = /^[-+]?\d+(?:[.,]\d+)*(?:e[-+]?\d+)?$/iu;

/** Epoch seconds, ms, µs or ns between 1990 and 2100, or an Excel serial day with a fraction in that time. */
export function isEpochOrSerial(cell: string): boolean {
  if (!/^\d+(?:[.,]\d+)?$/u.test(cell)) return false;
  const value = Number(cell.replace(',', '.'));
  if (/^\d{5}[.,]\d+$/u.test(cell)) return value > 32_874 && value < 73_050;
  const digits = cell.split(/[.,]/u)[0]!.length;
  if (![9, 10, 12, 13, 15, 16, 18, 19].includes(digits)) return false;
  const seconds = value / 10 ** (digits - (digits % 3 === 0 ? 9 : 10));
  return seconds > 631_152_000 && seconds < 4_102_444_800;
}

export function isMoment(cell: string): boolean {
  return momentPattern.test(cell) || compactMoment.test(cell) || isEpochOrSerial(cell) || isWritten(cell, true);
}

/** No date with a clock is longer, in any language. */
const longestMoment = 48;
const holdsYear = /(?<!\d)(?:19|20)\d\d/;

/** A date in a notation that the patterns do not know: "2. 3. 2026", "Mon 03/02/2026", "2026年3月2日"; with a clock or without. */
function isWritten(cell: string, isWithClock: boolean): boolean {
  if (cell.length > longestMoment || !holdsYear.test(cell)) return false;
  const times = (['ymd', 'dmy', 'mdy'] as const).flatMap((order) => parseDateTime(cell, order) ?? []);
  return times.length > 0 && holdsClock(cell, times[0]!.clockStart) === isWithClock;
}

/** @param clockStart As the parser gives it: no place of the cell where it was written anew. */
export function holdsClock(cell: string, clockStart: number): boolean {
  return Number.isFinite(clockStart) ? clockStart < cell.length : /\d\s?[:時时시点點]/u.test(cell);
}

function isClock(cell: string): boolean {
  return clockPattern.test(cell) ? !isNumber(cell) : cell.includes(':') && parseClock(cell) !== null;
}

export function isNumber(cell: string): boolean {
  return numberPattern.test(cell);
}

function isFewCodes(filled: readonly string[]): boolean {
  const codes = new Set(filled);
  return codes.size >= 2 && codes.size <= 5 && [...codes].every((cell) => /^\d$/.test(cell));
}

/** Looks at a column of sample cells. All shares are 0 where no cell holds anything. Never throws. */
export function columnLook(cells: readonly string[]): ColumnLook {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '' && cell !== '-');
  const share = (test: (cell: string) => boolean) =>
    filled.length === 0 ? 0 : filled.filter(test).length / filled.length;
  return {
    filled: cells.length === 0 ? 0 : filled.length / cells.length,
    moment: share(isMoment),
    dateOnly: share((cell) => (dayPattern.test(cell) && !isEpochOrSerial(cell)) || isWritten(cell, false)),
    clockOnly: share(isClock),
    span: share((cell) => !Number.isNaN(parseDurationMs(cell, 1)) || clockPattern.test(cell) || isNumber(cell)),
    number: share(isNumber),
    state: share((cell) => eventState(cell) !== null),
    gone: share((cell) => eventState(cell) === 'cleared'),
    isFewCodes: isFewCodes(filled),
    isPlus: filled.length > 0 && filled.every((cell) => cell === '+'),
    flag: share((cell) =>
      /^(?:[01]|y|n|yes|no|true|false|x|ja|nein|nej|oui|non|si|tak|nie|ano|ne|是|否)$/iu.test(cell),
    ),
    words: share((cell) => /\p{L}{2}/u.test(cell) && !isMoment(cell)),
    distinct: new Set(filled).size,
  };
}
