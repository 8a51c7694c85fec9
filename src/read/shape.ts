import type { Dialect, LogFile, TimeFormat } from '../model/log-file.js';
import { cellMark } from '../model/log-file.js';
import { isBadQuality, readCell, readRunningWord } from './cell-value.js';
import { splitName, splitNumbered, unitOf } from './column-name.js';
import { usualCount } from './dialect.js';
import type { SampledRow } from './file-sample.js';
import { plainWords, qualityNames, tagNames, valueNames } from './role-words.js';
import { detectTimeFormat, isClockColumn, isTimeName, joinDateAndClock, type TimeOptions } from './time-format.js';
import { parseDateTime } from './time-text.js';

/** Where things stand in a file, before anybody asks what they mean. */
export interface FileShape {
  readonly firstDataLine: number;
  readonly hasHeader: boolean;
  readonly header: readonly string[];
  /** Cells of a row of units under the header; empty where there is none. */
  readonly units: readonly string[];
  /** Lines before the header. */
  readonly preamble: readonly string[];
  readonly time: TimeFormat;
  readonly timeColumn: number;
  /** Column of the clock where date and clock are parted; -1 = none. */
  readonly clockColumn: number;
  readonly layout: LogFile['layout'];
  /** -1 = none. */
  readonly tagColumn: number;
  readonly qualityColumn: number;
  /** Long: the columns that hold values. */
  readonly valueColumns: readonly number[];
  /** Cells of a whole row. */
  readonly rowWidth: number;
  readonly rows: readonly SampledRow[];
  readonly columns: readonly ColumnFacts[];
}

/** What the sampled cells of one column hold. */
export interface ColumnFacts {
  readonly filled: number;
  readonly numbers: number;
  readonly openTexts: number;
  readonly distinct: number;
  readonly runningWords: number;
  readonly isQuality: boolean;
  /** True for numbers that are all OPC classic status codes, good ones among them. */
  readonly isStatusNumber: boolean;
}

/** Finds header, data and times in sampled rows; null with a reason when there is no column of times. */
export function findShape(
  rows: readonly SampledRow[],
  dialect: Dialect,
  options: TimeOptions & { readonly names?: readonly string[] | undefined },
): FileShape | string {
  const start = findStart(rows);
  if (!start) return 'no rows with at least two cells, one of them a time or a number, were found';
  const data = rows.filter((row) => row.stretch > 0 || row.line >= start.firstDataLine);
  const width = usualCount(data.map((row) => row.cells.length));
  const full = data.filter((row) => row.cells.length >= Math.min(width, start.header?.length ?? width));
  const header = fullHeader(start.header, options.names?.length === width ? options.names : undefined, width);
  const time = findTime(full, header, options);
  if (!time) return withoutTime(full, header);
  const columns = header.map((_, index) => factsOf(full, index, dialect));
  const rowWidth = Math.min(width, header.length);
  const base = { ...start, hasHeader: start.header !== null, header, rowWidth, rows: full, columns, ...time };
  const long = findLong(base, full);
  const second = long.layout === 'long' && haveMeasures(columns, long) ? secondTagColumn(base, full, long) : -1;
  if (second >= 0)
    return `a value is named by columns "${header[long.tagColumn]!}" and "${header[second]!}" together; it can be read with both in one column, or with a column for each role`;
  return { ...base, ...long };
}

/** "zone, parameter, value" with PV and SP below parameter: one of the two alone would mix readings with set points. */
function secondTagColumn(shape: Base, rows: readonly SampledRow[], long: LongFinding): number {
  const taken = [shape.timeColumn, shape.clockColumn, long.tagColumn, long.qualityColumn, ...long.valueColumns];
  return shape.header.findIndex((_, column) => {
    const { filled, numbers, distinct, isQuality } = shape.columns[column]!;
    const isText = filled > 0 && numbers === 0 && distinct > 1 && distinct < 12 && !isQuality;
    return isText && !taken.includes(column) && sayRoles(rows, column);
  });
}

interface Start {
  readonly firstDataLine: number;
  readonly header: readonly string[] | null;
  readonly units: readonly string[];
  readonly preamble: readonly string[];
}

function findStart(rows: readonly SampledRow[]): Start | null {
  const head = rows.filter((row) => row.stretch === 0);
  const width = usualCount(rows.map((row) => row.cells.length));
  if (width < 2) return null;
  const first = head.findIndex((row, i) => isDataRow(row, width) && isFollowed(head, i, width));
  if (first < 0) return null;
  let at = first - 1;
  const units = at >= 0 && isUnitRow(head[at]!.cells) ? head[at--]!.cells.map(withoutBrackets) : [];
  const candidate = at >= 0 ? head[at]! : null;
  const isHeader = candidate !== null && isHeaderRow(candidate.cells, width);
  const preamble = head.slice(0, isHeader ? at : at + 1).map((row) => row.cells.join('; ').trim());
  return { firstDataLine: head[first]!.line, header: isHeader ? candidate.cells : null, units, preamble };
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
  return filled.some(isTimeCell) || filled.filter(isNumberCell).length > filled.length / 2;
}

function isTimeCell(cell: string): boolean {
  return parseDateTime(cell, 'dmy') !== null || parseDateTime(cell, 'mdy') !== null || /^\d{10,19}(\.\d+)?$/.test(cell);
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
function fullHeader(header: readonly string[] | null, names: readonly string[] | undefined, width: number): string[] {
  const given = header ?? names ?? [];
  const seen = new Map<string, number>();
  return Array.from({ length: Math.max(width, given.length) }, (_, i) => {
    const name = given[i]?.trim() || `Column ${i + 1}`;
    const times = (seen.get(name) ?? 0) + 1;
    seen.set(name, times);
    return times > 1 ? `${name} (${times})` : name;
  });
}

type TimeFinding = Pick<FileShape, 'time' | 'timeColumn' | 'clockColumn'>;
/** A time stands near the front of a row; a number further back is never taken for one. */
const timeColumnsTried = 12;

function findTime(rows: readonly SampledRow[], header: readonly string[], options: TimeOptions): TimeFinding | null {
  const found: (TimeFinding & { rank: number })[] = [];
  for (let column = 0; column < Math.min(header.length, timeColumnsTried); column++) {
    const cells = rows.map((row) => row.cells[column] ?? '');
    if (!mayBeTimes(cells)) continue;
    const time = detectTimeFormat(cells, { ...options, columnName: header[column]! });
    if (!time) continue;
    const clockColumn = time.kind === 'date' && isBareDate(cells) ? findClock(rows, header.length, column) : -1;
    const joined = clockColumn < 0 ? time : joinedFormat(rows, column, clockColumn, options);
    if (joined) found.push({ time: joined, timeColumn: column, clockColumn, rank: rankOf(joined, header[column]!) });
  }
  return found.sort((a, b) => a.rank - b.rank)[0] ?? null;
}

function withoutTime(rows: readonly SampledRow[], header: readonly string[]): string {
  const clock = header
    .slice(0, timeColumnsTried)
    .findIndex((_, column) => isClockColumn(rows.map((row) => row.cells[column] ?? '')));
  if (clock < 0) return 'no column holds times';
  return `column "${header[clock]!}" holds clocks without a date, and no column holds the date`;
}

/** A quick look, so that columns of readings are not read as dates row by row. */
function mayBeTimes(cells: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== '').slice(0, 20);
  const likely = filled.filter(
    (cell) => /^\W*\d+([.,]\d+)?$/.test(cell) || /\d[-/. ]+(\d|\p{L})|\p{L} ?\d/u.test(cell),
  );
  return likely.length * 2 >= filled.length && filled.length > 0;
}

function rankOf(time: TimeFormat, name: string): number {
  const byKind = { date: 0, epoch: 1, 'spreadsheet-days': 2, elapsed: 3 }[time.kind];
  return byKind + (isTimeName(name) ? 0 : 0.5);
}

function isBareDate(cells: readonly string[]): boolean {
  return cells.every((cell) => !/\d[:.]\d+[:.]\d+.*\s.*\d|:/.test(cell.trim()));
}

function findClock(rows: readonly SampledRow[], width: number, dateColumn: number): number {
  for (const column of [dateColumn + 1, dateColumn - 1])
    if (column >= 0 && column < width && isClockColumn(rows.map((row) => row.cells[column] ?? ''))) return column;
  return -1;
}

function joinedFormat(rows: readonly SampledRow[], date: number, clock: number, options: TimeOptions) {
  return detectTimeFormat(
    rows.map((row) => (row.cells[date]?.trim() ? joinDateAndClock(row.cells[date], row.cells[clock] ?? '') : '')),
    options,
  );
}

function factsOf(rows: readonly SampledRow[], column: number, dialect: Dialect): ColumnFacts {
  const cells = rows.map((row) => row.cells[column]?.trim() ?? '').filter((cell) => cell !== '');
  const marks = cells.map((cell) => readCell(cell, dialect).mark);
  const distinct = new Set(cells);
  const words = cells.filter((cell) => /\p{L}/u.test(cell) && !Number.isNaN(readRunningWord(cell))).length;
  const qualityWords = [...distinct].filter((cell) =>
    /^(good|bad|uncertain|gut|ok|valid|invalid)\b/i.test(cell),
  ).length;
  return {
    filled: cells.length,
    numbers: marks.filter((mark) => mark === cellMark.number).length,
    openTexts: marks.filter((mark) => mark === cellMark.openText).length,
    distinct: distinct.size,
    runningWords: words,
    isStatusNumber: distinct.has('192') && [...distinct].every((cell) => statusNumbers.has(cell)),
    isQuality:
      distinct.size > 0 && qualityWords >= distinct.size / 2 && qualityWords > 0 && isKnownQuality([...distinct]),
  };
}

/** Bad, uncertain and good with their usual sub-states (OPC classic data access, from memory). */
const statusNumbers = new Set([
  '0',
  '4',
  '8',
  '12',
  '16',
  '20',
  '24',
  '28',
  '64',
  '68',
  '80',
  '84',
  '88',
  '192',
  '216',
]);

function isKnownQuality(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[a-z ,_-]+$/i.test(cell) || isBadQuality(cell, false));
}

type LongFinding = Pick<FileShape, 'layout' | 'tagColumn' | 'qualityColumn' | 'valueColumns'>;
type Base = Omit<FileShape, keyof LongFinding>;

function findLong(shape: Base, rows: readonly SampledRow[]): LongFinding {
  const { header, columns, timeColumn, clockColumn } = shape;
  const others = header.map((_, i) => i).filter((i) => i !== timeColumn && i !== clockColumn);
  const tagColumn = others.find((i) => isTagColumn(shape, rows, i)) ?? -1;
  const qualityColumn =
    others.find((i) => i !== tagColumn && isQualityColumn(header[i]!, columns[i]!, tagColumn >= 0)) ?? -1;
  const numeric = others.filter((i) => i !== tagColumn && i !== qualityColumn && isNumeric(columns[i]!));
  if (tagColumn < 0) return { layout: 'wide', tagColumn, qualityColumn, valueColumns: [] };
  const named = numeric.filter((i) => valueNames.test(plainWords(header[i]!)));
  const mixed = others.filter(
    (i) => i !== tagColumn && valueNames.test(plainWords(header[i]!)) && columns[i]!.numbers > 0,
  );
  const valueColumns = named.length > 0 ? [named[0]!] : mixed.length > 0 ? [mixed[0]!] : numeric;
  return { layout: valueColumns.length > 0 ? 'long' : 'none', tagColumn, qualityColumn, valueColumns };
}

/** Half numbers is enough: the rest may be words for open inputs. */
function isNumeric(facts: ColumnFacts): boolean {
  return facts.filled > 0 && facts.numbers + facts.openTexts >= 0.5 * facts.filled && facts.numbers > 0;
}

function isQualityColumn(name: string, facts: ColumnFacts, isLong: boolean): boolean {
  if (facts.isQuality) return true;
  if (isLong && facts.isStatusNumber && meaningIn(name) === '' && !valueNames.test(plainWords(name))) return true;
  return isLong && qualityNames.test(plainWords(name)) && facts.filled > 0;
}

function isTagColumn(shape: Base, rows: readonly SampledRow[], column: number): boolean {
  const facts = shape.columns[column]!;
  if (facts.filled < 0.8 * rows.length || facts.isQuality) return false;
  const name = plainWords(shape.header[column]!);
  const isText = facts.numbers < 0.2 * facts.filled && facts.openTexts < 0.2 * facts.filled;
  if (isText && (tagNames.test(name) || /(^| )(id|tag|name|zone|channel|kanal)$/.test(name)))
    return facts.distinct <= facts.filled;
  if (!isText)
    return tagNames.test(name) && facts.distinct > 1 && facts.distinct < facts.filled / 3 && repeatsTimes(shape, rows);
  const isState = facts.runningWords >= 0.5 * facts.filled;
  const isFew = facts.distinct > 1 && facts.distinct < facts.filled / 2;
  return !isState && isFew && (!shape.hasHeader || sayRoles(rows, column)) && repeatsTimes(shape, rows);
}

/** Measured values differ from row to row; a message that names a temperature has the same few priorities beside it. */
export function haveMeasures(
  columns: readonly ColumnFacts[],
  { tagColumn, valueColumns }: Pick<FileShape, 'tagColumn' | 'valueColumns'>,
): boolean {
  return valueColumns.some((column) => columns[column]!.distinct > columns[tagColumn]!.distinct);
}

/** Under a header that no table knows, texts that say reading, set point or output are tags. */
export function sayRoles(rows: readonly SampledRow[], column: number): boolean {
  const texts = [...new Set(rows.map((row) => row.cells[column]?.trim() ?? ''))];
  const roles = texts.filter((text) => ['reading', 'temperature', 'setpoint', 'output'].includes(meaningIn(text)));
  return roles.length * 2 >= texts.length;
}

function meaningIn(text: string): string {
  return splitName(text).meaning ?? splitNumbered(text)?.meaning ?? '';
}

/** In a long file several rows share a time. */
function repeatsTimes({ timeColumn }: Base, rows: readonly SampledRow[]): boolean {
  let repeats = 0;
  for (let i = 1; i < rows.length; i++) if (rows[i]!.cells[timeColumn] === rows[i - 1]!.cells[timeColumn]) repeats++;
  return repeats > 0.3 * rows.length;
}
