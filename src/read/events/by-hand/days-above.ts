import { dateTextOf } from '../../times/clock-days.js';
import { parseDateTime } from '../../times/time-text.js';
import { columnLook } from '../cell-looks.js';
import { rolesOfName } from '../recognise.js';
import { mostOf, type Cells, type MendFinder } from './mend.js';

/** A list whose rows hold clocks alone, with the day in a line of its own above them: each row gets its day. */
export const daysAbove: MendFinder = ({ header, rows, above }) => {
  const first = above.flatMap((cells) => dayOf(cells) ?? []).at(-1) ?? null;
  const timed = rows.filter((cells) => dayOf(cells) === null);
  if (first === null && timed.length === rows.length) return null;
  const looks = header.map((_, column) => columnLook(timed.map((cells) => cells[column] ?? '')));
  if (looks.some(({ dateOnly, moment }) => dateOnly >= mostOf || moment >= mostOf)) return null;
  const start = header.findIndex(
    (name, column) => looks[column]!.clockOnly >= mostOf && !rolesOfName(name).whole.includes('end'),
  );
  if (start < 0) return null;
  // Only the first row below a day says it, as where the first of merged cells does: the others hold it.
  const begin = () => {
    let day = first;
    const withDay = (cells: Cells, text: string): Cells => cells.toSpliced(start, 0, text);
    return (cells: Cells): Cells | null => {
      const own = dayOf(cells);
      if (own !== null) {
        day = own;
        return null;
      }
      const clock = (cells[start] ?? '').trim();
      const text = clock === '' ? '' : (day ?? '');
      if (text !== '') day = null;
      return withDay(cells, text);
    };
  };
  return { header: header.toSpliced(start, 0, 'Date'), note: 'the day stands in a line above its rows', begin };
};

/** The date of a line that holds nothing else but a label; null for any other line. */
function dayOf(cells: Cells): string | null {
  const filled = cells.filter((cell) => cell.trim() !== '');
  if (filled.length === 0 || filled.length > 2) return null;
  const text = dateTextOf(filled.join(' '));
  const isDate = text !== null && (['ymd', 'dmy', 'mdy'] as const).some((order) => parseDateTime(text, order));
  return isDate && !/\d:\d/u.test(text) ? text : null;
}
