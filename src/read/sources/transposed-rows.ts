import type { RowForm } from '../../model/log-file.js';
import { LogProblem } from '../../model/problem.js';
import { recordsOf } from './record-rows.js';
import type { OnBadRow } from './records.js';
import { inParts, type RowSource, type TableCell, type TablePart, type TableRow } from './table-part.js';

type Transposed = Extract<RowForm, { kind: 'transposed' }>;

/** All cells must be held, some 40 bytes each, to be turned (own choice). */
const mostCells = 5_000_000;

/** A sheet with its times across and its names down, turned: a row of each column of times, which is its line. Throws LogProblem. */
export function readTransposed(source: RowSource, form: Transposed, onBadRow: OnBadRow): AsyncGenerator<TablePart> {
  return inParts(turned(source, form, onBadRow));
}

async function* turned(source: RowSource, form: Transposed, onBadRow: OnBadRow): AsyncGenerator<TableRow> {
  const { timeLine, dateLine, firstColumn } = form;
  const rows: { readonly name: string; readonly cells: readonly TableCell[] }[] = [];
  let times: readonly TableCell[] = [];
  let dates: readonly TableCell[] = [];
  let [cellCount, group, corner] = [0, '', ''];
  for await (const { line, cells } of recordsOf(source, onBadRow)) {
    if (line === dateLine) dates = filledOn(cells.slice(firstColumn));
    else if (line === timeLine) [times, corner] = [cells.slice(firstColumn), String(cells[firstColumn - 1]).trim()];
    else if (line < timeLine) yield { line: 0, cells };
    else {
      cellCount += cells.length;
      if (cellCount > mostCells) throw tooWide(source);
      const names = cells.slice(0, firstColumn).map((cell) => String(cell).trim());
      // "Zone 1" stands once before its set point and its output.
      if (firstColumn > 1) group = names[0] = names[0] || group;
      const values = cells.slice(firstColumn);
      if (values.some((cell) => cell !== '')) rows.push({ name: named(names, corner), cells: values });
    }
  }
  yield { line: 0, cells: ['time', ...rows.map(({ name }) => name)] };
  for (const [i, time] of times.entries())
    yield { line: firstColumn + i + 1, cells: [timeText(dates[i], time), ...rows.map(({ cells }) => cells[i] ?? '')] };
}

/** A bare number is a zone's only together with the word above it. */
function named(names: readonly string[], corner: string): string {
  const name = names.filter((it) => it !== '').join(' ');
  return /^\d+$/.test(name) && /\p{L}/u.test(corner) ? `${corner} ${name}` : name;
}

function timeText(date: TableCell | undefined, time: TableCell): TableCell {
  return date === undefined || date === '' ? time : `${date} ${time}`;
}

/** A date stands once above the first of its times. */
function filledOn(cells: readonly TableCell[]): TableCell[] {
  let last: TableCell = '';
  return cells.map((cell) => (last = cell === '' ? last : cell));
}

function tooWide({ name }: RowSource): LogProblem {
  return new LogProblem(
    'too-large',
    { file: name },
    `The times stand side by side in one line, and more than ${mostCells} cells would have to be held to turn the sheet.`,
    'Export it with a column of times and one row per time.',
  );
}
