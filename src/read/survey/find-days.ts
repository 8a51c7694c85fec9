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

/** Dates that stand alone among the rows, and where the clock passes midnight. */
interface Met {
  readonly dates: { readonly line: number; readonly text: string }[];
  /** Lines from which on the day counts so many more than at the last date. */
  readonly turns: { readonly line: number; readonly days: number }[];
  readonly last: SampledRow[];
}

/**
 * Finds the days of a file whose rows hold times of day only: from dates that stand above the rows or between them, else
 * from the date in the file's name, and from every midnight that the clock passes. Reads the whole file once.
 *
 * @returns The shape with its days and with rows of its beginning and end; null where no date is found.
 */
export async function findDays(source: RowSource, shape: FileShape, options: TimeOptions): Promise<FileShape | null> {
  const met = await meet(source, shape);
  const above = shape.preamble.flatMap((line) => dateIn(line)).slice(-1);
  const named = dateInName(source.name);
  const first = above[0] ?? (met.dates[0] && met.dates[0].line < shape.firstDataLine ? null : named);
  const texts = [...(first ? [first] : []), ...met.dates.map(({ text }) => text)];
  const format = detectTimeFormat(texts, options);
  if (!format || format.kind !== 'date') return null;
  const read = compileTime(format);
  const marks = [...(first ? [{ line: 0, text: first }] : []), ...met.dates].map(({ line, text }) => ({
    line,
    dayMs: Math.floor(read(text) / dayLengthMs) * dayLengthMs,
    isDateLine: line > 0,
  }));
  if (marks.some(({ dayMs }) => Number.isNaN(dayMs))) return null;
  const head = shape.rows.filter((row) => row.stretch === 0);
  const end = Math.max(...head.map(({ line }) => line));
  const rows = [...head, ...met.last.filter(({ line }) => line > end)];
  return { ...shape, rows, days: withTurns(marks, met.turns), time: timeOf(shape, format, first, above.length > 0) };
}

function timeOf(shape: FileShape, format: TimeFormat, first: string | null, isAbove: boolean): TimeFormat {
  const place =
    first === null ? 'stands between the rows' : isAbove ? 'stands above them' : "stands in the file's name";
  const why = `times of day; the date ${place}${format.order === 'ymd' ? '' : ` (${format.why})`}, and a clock that goes back begins the next day`;
  return { ...shape.time, order: format.order, isUndecided: format.isUndecided, why };
}

async function meet(source: RowSource, shape: FileShape): Promise<Met> {
  const met: Met = { dates: [], turns: [], last: [] };
  const read = compileTime(shape.time);
  let [days, lastMs] = [0, NaN];
  for await (const row of allRows(source, 1)) {
    const [date] = row.cells.filter((cell) => cell.trim() !== '').length > 2 ? [] : dateIn(row.cells.join(' '));
    if (date !== undefined && !shape.preamble.includes(row.cells.join('; ').trim())) {
      met.dates.push({ line: row.line, text: date });
      [days, lastMs] = [0, NaN];
      continue;
    }
    const ms = row.line < shape.firstDataLine ? NaN : read(timeCell(row.cells, shape));
    if (Number.isNaN(ms)) continue;
    const turned = Number.isNaN(lastMs) ? days : dayAfter(days * dayLengthMs, lastMs, ms) / dayLengthMs;
    if (turned !== days) met.turns.push({ line: row.line, days: turned });
    [days, lastMs] = [turned, ms];
    if (row.cells.length >= shape.rowWidth && met.last.push({ ...row, stretch: 1 }) > lastRows) met.last.shift();
  }
  return met;
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
