import { cellOf, type Cells } from './event-columns.js';
import type { TimeColumns } from './event-table.js';

/**
 * The dates of a list in which a date stands beside the first of its rows and is left blank below, as people write it and
 * as merged cells of a spreadsheet come out.
 */
export class HeldDates {
  /** Rows that were given the date of a row above. */
  count = 0;
  private last = '';

  /** @param start The columns of a row's time; without a clock beside the date nothing is held. */
  constructor(private readonly start: TimeColumns) {}

  /** @param cells Of the next row. @returns Them with their date: a row that has one, or no clock, stays as it is. */
  fill(cells: Cells): Cells {
    const [date, clock] = this.start;
    if (clock === undefined) return cells;
    const own = cellOf(cells, date);
    if (own !== '') this.last = own;
    if (own !== '' || this.last === '' || cellOf(cells, clock) === '') return cells;
    this.count++;
    return cells.with(date, this.last);
  }
}
