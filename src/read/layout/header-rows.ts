import { unitOf } from '../names/column-name.js';
import { namesFromAbove } from './channel-names.js';
import { usualCount } from './dialect.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { dateTextOf } from '../times/clock-days.js';
import { isTimeName } from '../times/time-format.js';
import { parseClock, parseDateTime } from '../times/time-text.js';

interface Start {
  readonly firstDataLine: number;
  readonly header: readonly string[] | null;
  readonly units: readonly string[];
  readonly preamble: readonly string[];
}

/** Finds where the data begin, and what stands above: header, row of units, preamble. Null = no rows of data. */
export function findStart(rows: readonly SampledRow[]): Start | null {
  const head = rows.filter((row) => row.stretch === 0);
  const width = usualCount(rows.map((row) => row.cells.length));
  if (width < 2) return null;
  const first = head.findIndex((row, i) => isDataRow(row, width) && isFollowed(head, i, width));
  if (first < 0) return null;
  let at = first - 1;
  while (at >= 0 && isLoneDate(head[at]!.cells)) at--;
  at = aboveRemarks(head, at, width);
  const below = at >= 0 && isUnitRow(head[at]!.cells) ? head[at--]!.cells.map(withoutBrackets) : [];
  const candidate = at >= 0 ? head[at]! : null;
  const isHeader = candidate !== null && isHeaderRow(candidate.cells, width);
  const grouped = isHeader && at > 0 ? underGroups(head[at - 1]!.cells, candidate.cells) : null;
  const rowsAbove = head.slice(0, Math.max(at, 0)).map((row) => row.cells);
  const filled = isHeader && !grouped ? namesFromAbove(candidate.cells, rowsAbove, isUnitRow) : null;
  const units = below.length > 0 ? below : (filled?.units ?? []).map(withoutBrackets);
  const above = grouped ? at - 1 : isHeader ? at : at + 1;
  const preamble = head.slice(0, above).map((row) => row.cells.join('; ').trim());
  const header = grouped ?? filled?.names ?? (isHeader ? candidate.cells : null);
  return { firstDataLine: head[first]!.line, header, units, preamble };
}

/**
 * Names of a header whose names stand below others that hold for several columns ("Zone 1" over PV, SP and OUT, as merged
 * cells give it): both together. Null unless names repeat without those above, and no longer do so with them.
 */
function underGroups(groups: readonly string[], names: readonly string[]): string[] | null {
  const filled = groups.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length < 2 || filled.some(isNumberCell) || !isRepeating(names)) return null;
  let group = '';
  const joined = names.map((name, column) => {
    group = groups[column]?.trim() || group;
    return `${group} ${name.trim()}`.trim();
  });
  return isRepeating(joined) ? null : joined;
}

function isRepeating(names: readonly string[]): boolean {
  const filled = names.map((name) => name.trim()).filter((name) => name !== '');
  return new Set(filled).size < filled.length;
}

/** One data row may be a title with a number in it; two are data. */
function isFollowed(rows: readonly SampledRow[], at: number, width: number): boolean {
  const next = rows.slice(at + 1, at + 4);
  return next.length === 0 || next.filter((row) => isDataRow(row, width)).length * 2 >= next.length;
}

function isDataRow({ cells }: SampledRow, width: number): boolean {
  if (cells.length < Math.max(2, Math.ceil(width / 2))) return false;
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return cells.length >= width;
  if (width > 2 && isLabelledTime(filled)) return false;
  const numbers = filled.filter(isNumberCell).length;
  if (numbers > 0 && cells.length >= width && filled.some(isClockCell)) return true;
  if (cells.length >= width && isOfDayAbove(cells, filled)) return true;
  return filled.some(isTimeCell) || numbers > filled.length / 2;
}

/** A start, or a start and an end, beside texts and without a date: it stands in a row above. Times across a sheet are more. */
function isOfDayAbove(cells: readonly string[], filled: readonly string[]): boolean {
  const clocks = filled.filter(isClockCell).length;
  return cells[0]!.trim() === '' && (clocks === 1 || clocks === 2) && filled.length > clocks;
}

/** "From;2026-03-02 06:00" above a header. */
function isLabelledTime(filled: readonly string[]): boolean {
  return filled.length === 2 && /^\p{L}{2}/u.test(filled[0]!) && isTimeCell(filled[1]!);
}

/** Names of columns are looked for so many lines above remarks that stand between them and the first row (own choice). */
const mostRemarks = 5;

/** The place of a header with a name for the time, where remarks of one cell stand between it and the rows; else the same. */
function aboveRemarks(head: readonly SampledRow[], at: number, width: number): number {
  for (let above = at; above >= 0 && above > at - mostRemarks; above--) {
    const { cells } = head[above]!;
    const filled = cells.filter((cell) => cell.trim() !== '');
    if (filled.length > 1) return isHeaderRow(cells, width) && filled.some(isTimeName) ? above : at;
  }
  return at;
}

/** A date that stands by itself between header and rows, for rows that hold times of day only. */
function isLoneDate(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const date = filled.length > 2 ? null : dateTextOf(filled.join(' '));
  return date !== null && isTimeCell(date);
}

function isTimeCell(cell: string): boolean {
  return parseDateTime(cell, 'dmy') !== null || parseDateTime(cell, 'mdy') !== null || /^\d{10,19}(\.\d+)?$/.test(cell);
}

function isClockCell(cell: string): boolean {
  return /^\d{1,2}:\d\d/.test(cell) && parseClock(cell) !== null;
}

function isNumberCell(cell: string): boolean {
  return /^[-+]?[\d.,]*\d[\d.,]*(e[-+]?\d+)?$/i.test(cell) || /^nan$/i.test(cell);
}

function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.map(withoutBrackets).filter((cell) => cell !== '' && cell !== '-');
  const units = filled.filter(
    (cell) => unitOf(cell) !== null || /^(unit|einheit|unite)s?:?$/i.test(cell) || isTimeUnit(cell),
  );
  return filled.length > 0 && units.length >= 0.7 * filled.length && filled.some((cell) => /[°%CFK]/i.test(cell));
}

function withoutBrackets(cell: string): string {
  return cell.trim().replace(/^[([{](.*)[)\]}]$/, '$1');
}

function isTimeUnit(cell: string): boolean {
  return /^(y{2,4}|d{1,2}|m{1,2}|h{1,2}|s{1,2}|utc|local|time|iso)([-/.: ]|T?h|$)/i.test(cell);
}

function isHeaderRow(cells: readonly string[], width: number): boolean {
  if (cells.length < Math.max(2, width / 2)) return false;
  const filled = cells.filter((cell) => cell.trim() !== '');
  return filled.length > 0 && filled.filter((cell) => isNumberCell(cell.trim())).length <= filled.length / 2;
}

/** Names for every column; equal names get a number, columns without one are called by their place. */
export function fullHeader(
  header: readonly string[] | null,
  names: readonly string[] | undefined,
  width: number,
): string[] {
  const given = header ?? names ?? [];
  const seen = new Map<string, number>();
  return Array.from({ length: Math.max(width, given.length) }, (_, i) => {
    const name = given[i]?.trim() || `Column ${i + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times > 1 ? `${name} (${times})` : name;
  });
}
