import type { SampledRow } from '../sources/sampled-row.js';
import { isClockColumn } from '../times/time-format.js';
import { parseDateTime } from '../times/time-text.js';

interface Names {
  readonly header: readonly string[] | null;
  /** Empty where there is no row of units. */
  readonly units: readonly string[];
}

/** A time stands near the front of a row. */
const timeColumnsTried = 3;
/** What belongs to the name before it: a number, a unit, brackets. */
const belongsToName = /^(?:\d{1,3}|[[({].*[\])}]|°[CFK])$/;

/**
 * Puts names over their columns where blanks part the cells: "Time" stands over a date and a clock, which are two cells,
 * "Zone 1" is one name in two words, and over the time there is no unit.
 *
 * @param rows Rows of data.
 * @param width Cells that they usually have.
 */
export function namesOverBlanks({ header, units }: Names, rows: readonly SampledRow[], width: number): Names {
  if (!header) return { header, units };
  const whole = header.length > width ? joined(header) : header;
  const dateColumn = whole.length === width - 1 ? columnOfDate(rows) : -1;
  const names = dateColumn < 0 ? whole : whole.toSpliced(dateColumn + 1, 0, '');
  const lacking = width - units.length;
  return { header: names, units: units.length === 0 || lacking <= 0 ? units : [...Array(lacking).fill(''), ...units] };
}

function joined(header: readonly string[]): string[] {
  const names: string[] = [];
  for (const word of header) {
    if (names.length > 0 && belongsToName.test(word)) names[names.length - 1] += ` ${word}`;
    else names.push(word);
  }
  return names;
}

/** The column of dates that has one of clocks behind it; -1 = none. */
function columnOfDate(rows: readonly SampledRow[]): number {
  for (let column = 0; column < timeColumnsTried; column++) {
    const cells = rows.map((row) => row.cells[column] ?? '');
    const isDate = cells.every(
      (cell) => !cell.includes(':') && (['ymd', 'dmy', 'mdy'] as const).some((order) => parseDateTime(cell, order)),
    );
    if (isDate && isClockColumn(rows.map((row) => row.cells[column + 1] ?? ''))) return column;
  }
  return -1;
}
