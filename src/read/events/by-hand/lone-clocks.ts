import { columnLook } from '../cell-looks.js';
import { rolesOfName } from '../recognise.js';
import { areMost, filledCells, mostOf, type Cells, type MendFinder } from './mend.js';

/**
 * Clocks that look like numbers, in a column whose name says a time and beside a column of dates: "6.30" and "6,30", 0630 and
 * 630, "12h" and 12. A spreadsheet takes the last zero off 6.30.
 */
export const loneClocks: MendFinder = ({ header, rows }) => {
  const named = header.flatMap((name, column) => {
    const cells = saysClock(name) ? filledCells(rows, column) : [];
    return cells.some((cell) => clockOf(cell) !== null) && areMost(cells, isClock) ? [column] : [];
  });
  if (named.length === 0) return null;
  const looks = header.map((_, column) => columnLook(rows.map((cells) => cells[column] ?? '')));
  if (!looks.some(({ dateOnly, moment }) => dateOnly >= mostOf || moment >= mostOf)) return null;
  const columns = named.filter((column) => looks[column]!.dateOnly < mostOf);
  if (columns.length === 0) return null;
  const begin = () => (cells: Cells) =>
    cells.map((cell, i) => (columns.includes(i) ? (clockOf(cell.trim()) ?? cell) : cell));
  return {
    header,
    note: `clocks are taken from numbers in ${columns.map((c) => `"${header[c]!}"`).join(', ')}`,
    begin,
  };
};

function saysClock(name: string): boolean {
  const { whole, part } = rolesOfName(name);
  const roles = whole.length > 0 ? whole : part;
  return roles.some((role) => role === 'time' || role === 'start' || role === 'end');
}

/** A bare hour is a clock beside others only. */
function isClock(cell: string): boolean {
  return cell.length > 2 && (clockOf(cell) !== null || /^\d{1,2}[:h]\d{2}/iu.test(cell));
}

/** "06:30" for a clock that looks like a number; null for any other cell. */
function clockOf(cell: string): string | null {
  const parted = /^(\d{1,2})[.,](\d{1,2})$/u.exec(cell);
  const joined = /^(\d{1,2})(\d{2})$/u.exec(cell);
  const hour = /^(\d{1,2})(?:\s?(?:h|uhr|u)\.?)?$/iu.exec(cell);
  const hours = Number((parted ?? joined ?? hour)?.[1] ?? NaN);
  const minutes = parted ? Number(parted[2]!.padEnd(2, '0')) : Number(joined?.[2] ?? 0);
  if (!(hours <= 24 && minutes < 60)) return null;
  return `${String(hours).padStart(2, '0')}:${String(minutes).padStart(2, '0')}`;
}
