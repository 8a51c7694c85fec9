import type { ClockDay, TimeFormat } from '../../model/log-file.js';
import type { FileShape } from '../layout/file-shape.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { dateInName, dateTextOf, dayAfter } from '../times/clock-days.js';
import { compileTime, detectTimeFormat, type TimeOptions } from '../times/time-format.js';
import { parseDateTime } from '../times/time-text.js';
import { timeCell } from '../times/time-cell.js';
import type { RowSource } from '../sources/table-part.js';
import { allRows } from './all-rows.js';

const dayLengthMs = 86_400_000;
/** Rows kept of the end of the file, so that its span is known. */
const lastRows = 300;

interface MetDate {
  readonly line: number;
  readonly text: string;
  /** False for a date that stands in a row, in a column of its own. */
  readonly isDateLine: boolean;
  /** Days that the clock has passed since the date before, or since the first row. */
  readonly days: number;
}

/** Dates that stand among the rows, and where the clock passes midnight. */
interface Met {
  readonly dates: MetDate[];
  /** Lines from which on the day counts so many more than at the last date. */
  readonly turns: { readonly line: number; readonly days: number }[];
  readonly last: SampledRow[];
}

/**
 * Finds the days of a file whose rows hold times of day only: from dates that stand above the rows, between them or in the
 * first row of each day, else from the date in the file's name, and from every midnight that the clock passes. Reads the
 * whole file once.
 *
 * @returns The shape with its days and with rows of its beginning and end; null where no date is found.
 */
export async function findDays(source: RowSource, shape: FileShape, options: TimeOptions): Promise<FileShape | null> {
  const met = await meet(source, shape);
  const above = shape.preamble.flatMap((line) => dateIn(line)).slice(-1);
  const beginsDated = met.dates[0] !== undefined && met.dates[0].line < shape.firstDataLine;
  const isInRows = shape.dayColumn !== undefined;
  const first = isInRows ? null : (above[0] ?? (beginsDated ? null : dateInName(source.name)));
  const texts = [...(first ? [first] : []), ...met.dates.map(({ text }) => text)];
  const format = detectTimeFormat(texts, options);
  if (!format || format.kind !== 'date') return null;
  const read = compileTime(format);
  const dayOf = (text: string): number => Math.floor(read(text) / dayLengthMs) * dayLengthMs;
  const marks = met.dates.map(({ line, text, isDateLine }) => ({ line, dayMs: dayOf(text), isDateLine }));
  if (first) marks.unshift({ line: 0, dayMs: dayOf(first), isDateLine: false });
  else if (isInRows)
    marks.unshift({ ...marks[0]!, line: 0, dayMs: marks[0]!.dayMs - met.dates[0]!.days * dayLengthMs });
  if (marks.some(({ dayMs }) => Number.isNaN(dayMs))) return null;
  const head = shape.rows.filter((row) => row.stretch === 0);
  const end = Math.max(...head.map(({ line }) => line));
  const rows = [...head, ...met.last.filter(({ line }) => line > end)];
  const place = first === null ? placeIn(shape) : above.length > 0 ? 'stands above them' : "stands in the file's name";
  return { ...shape, rows, days: withTurns(marks, met.turns), time: timeOf(shape, format, place) };
}

function placeIn({ dayColumn, header }: FileShape): string {
  if (dayColumn === undefined) return 'stands between the rows';
  return `in "${header[dayColumn]!}" stands where a day begins and holds until the next`;
}

function timeOf(shape: FileShape, format: TimeFormat, place: string): TimeFormat {
  const why = `times of day; the date ${place}${format.order === 'ymd' ? '' : ` (${format.why})`}, and a clock that goes back begins the next day`;
  return { ...shape.time, order: format.order, isUndecided: format.isUndecided, why };
}

async function meet(source: RowSource, shape: FileShape): Promise<Met> {
  const met: Met = { dates: [], turns: [], last: [] };
  const read = compileTime(shape.time);
  let [days, lastMs] = [0, NaN];
  for await (const row of allRows(source, 1)) {
    const alone = dateAlone(row.cells);
    if (alone !== null && !shape.preamble.includes(row.cells.join('; ').trim())) {
      met.dates.push({ line: row.line, text: alone, isDateLine: true, days });
      [days, lastMs] = [0, NaN];
      continue;
    }
    const ms = row.line < shape.firstDataLine ? NaN : read(timeCell(row.cells, shape));
    if (Number.isNaN(ms)) continue;
    const turned = Number.isNaN(lastMs) ? days : dayAfter(days * dayLengthMs, lastMs, ms) / dayLengthMs;
    const [dated] = shape.dayColumn === undefined ? [] : dateIn(row.cells[shape.dayColumn] ?? '');
    if (dated !== undefined) met.dates.push({ line: row.line, text: dated, isDateLine: false, days: turned });
    else if (turned !== days) met.turns.push({ line: row.line, days: turned });
    [days, lastMs] = [dated === undefined ? turned : 0, ms];
    if (row.cells.length >= shape.rowWidth && met.last.push({ ...row, stretch: 1 }) > lastRows) met.last.shift();
  }
  return met;
}

/** The date of a line that holds no row; null for any other line. */
function dateAlone(cells: readonly string[]): string | null {
  return cells.filter((cell) => cell.trim() !== '').length > 2 ? null : (dateIn(cells.join(' '))[0] ?? null);
}

/** The date of a line that holds nothing else but a label; as a list of one or none. */
function dateIn(line: string): string[] {
  const text = dateTextOf(line);
  return text !== null && (['ymd', 'dmy', 'mdy'] as const).some((order) => parseDateTime(text, order)) ? [text] : [];
}

function withTurns(marks: readonly ClockDay[], turns: Met['turns']): ClockDay[] {
  const turned = turns.map(({ line, days }) => {
    const mark = marks.findLast((it) => it.line <= line) ?? marks[0]!;
    return { line, dayMs: mark.dayMs + days * dayLengthMs, isDateLine: false };
  });
  return [...marks, ...turned].sort((a, b) => a.line - b.line);
}
