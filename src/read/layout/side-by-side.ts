import type { Dialect, RowForm, SideBlock } from '../../model/log-file.js';
import { plainWords, valueNames } from '../names/role-words.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { isTimeName } from '../times/time-format.js';
import { parseClock, parseDateTime } from '../times/time-text.js';
import { factsOf, type ColumnFacts } from './column-facts.js';
import { usualCount } from './dialect.js';
import { findStart, fullHeader } from './header-rows.js';
import { saysQuality } from './own-qualities.js';

type SideBySide = Extract<RowForm, { kind: 'side-by-side' }>;

/** A column of times is one whose filled cells are times, all but a few (own choice). */
const leastShare = 0.9;
/** So many rows from all over the sample show whether a column is one of times (own choice). */
const rowsLookedAt = 400;

/**
 * Finds columns of times that stand side by side, each with values of its own: "Time1; Zone 1 PV; Time2; Zone 2 PV", as
 * tags are put beside each other in a sheet. The columns may be of different length.
 *
 * @returns null where there is one time for the whole row, or where what stands between two times holds no numbers, as in
 *   a list of beginnings and ends. Never throws.
 */
export function findSideBySide(rows: readonly SampledRow[], dialect: Dialect): SideBySide | null {
  const start = findStart(rows);
  if (!start?.header) return null;
  const data = rows.filter((row) => row.stretch > 0 || row.line >= start.firstDataLine);
  const header = fullHeader(start.header, undefined, usualCount(data.map((row) => row.cells.length)));
  const times = timesOf(header, data);
  if (times.length < 2) return null;
  const facts = header.map((_, column) => factsOf(data, column, dialect));
  const blocks = spansOf(times, header, facts).map((span) => blockOf(span, header, facts));
  const widths = new Set(blocks.map((block) => (block ? block.values.length : 0)));
  // Blocks alike, and nothing but a running number beside them.
  if (widths.size !== 1 || widths.has(0)) return null;
  const found = blocks.filter((block) => block !== null);
  const used = new Set(found.flatMap(({ time, values, quality }) => [...time, ...values, quality]));
  const isAlone = header.every((_, column) => used.has(column) || facts[column]!.numbers === facts[column]!.filled);
  return isAlone ? { kind: 'side-by-side', firstLine: start.firstDataLine, blocks: named(found, header) } : null;
}

/** Columns of moments, and of dates with a clock beside them. */
function timesOf(header: readonly string[], rows: readonly SampledRow[]): (readonly number[])[] {
  const stride = Math.ceil(rows.length / rowsLookedAt);
  const looked = rows.filter((_, i) => i % stride === 0);
  const cellsOf = (column: number): string[] =>
    looked.map((row) => row.cells[column]?.trim() ?? '').filter((cell) => cell !== '');
  const are = (column: number, isMeant: (cell: string) => boolean): boolean => {
    const cells = cellsOf(column);
    let missesLeft = cells.length - leastShare * cells.length;
    return cells.length > 0 && cells.every((cell) => isMeant(cell) || --missesLeft >= 0);
  };
  const times: number[][] = [];
  for (let column = 0; column < header.length; column++) {
    if (are(column, isMoment)) times.push([column]);
    else if (are(column, isDay) && are(column + 1, isClock)) times.push([column, ++column]);
  }
  return times;
}

function isMoment(cell: string): boolean {
  return /^\d{10}(?:\d{3})?(?:\.\d+)?$/.test(cell) || (/\d[:.h]\d/.test(cell) && cell.length > 10 && isDay(cell));
}

function isDay(cell: string): boolean {
  return parseDateTime(cell, 'dmy') !== null || parseDateTime(cell, 'mdy') !== null;
}

function isClock(cell: string): boolean {
  return cell.includes(':') && parseClock(cell) !== null;
}

interface Span {
  readonly time: readonly number[];
  readonly others: readonly number[];
}

/** What stands behind each time, or before it where the row ends with one. */
function spansOf(
  times: readonly (readonly number[])[],
  header: readonly string[],
  facts: readonly ColumnFacts[],
): Span[] {
  const last = facts.findLastIndex(({ filled }) => filled > 0);
  const isBehind = times.at(-1)!.at(-1) === last && times[0]![0] !== 0;
  const between = (from: number, to: number): number[] =>
    Array.from({ length: Math.max(0, to - from) }, (_, i) => from + i);
  return times.map((time, i) => ({
    time,
    others: isBehind
      ? between(i === 0 ? 0 : times[i - 1]!.at(-1)! + 1, time[0]!)
      : between(time.at(-1)! + 1, times[i + 1]?.[0] ?? header.length),
  }));
}

function blockOf({ time, others }: Span, header: readonly string[], facts: readonly ColumnFacts[]): SideBlock | null {
  const filled = others.filter((column) => facts[column]!.filled > 0);
  const quality = filled.find((column) => saysQuality(header[column]!, facts[column]!)) ?? -1;
  const values = filled.filter((column) => column !== quality);
  const hasNumbers = values.every((column) => {
    const { numbers, openTexts, runningWords, filled: count } = facts[column]!;
    return numbers + openTexts + runningWords >= 0.5 * count;
  });
  return values.length > 0 && hasNumbers ? { time, values, tags: [], quality } : null;
}

/** A value that has no name but "Value" has that of its time. */
function named(blocks: readonly SideBlock[], header: readonly string[]): SideBlock[] {
  return blocks.map((block) => {
    const above = header[block.time[0]!]!;
    const ofTime = isPlain(above) ? null : above;
    return { ...block, tags: block.values.map((column) => (isPlain(header[column]!) && ofTime) || header[column]!) };
  });
}

/** "Time (2)", "Value1", "Column 3": words that name no tag. */
function isPlain(name: string): boolean {
  const words = plainWords(name.replace(/ \(\d+\)$/, '')).replace(/ ?\d+$/, '');
  return words === 'column' || valueNames.test(words) || isTimeName(words);
}
