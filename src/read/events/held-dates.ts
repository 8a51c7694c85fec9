import { DAY_MS } from '../../model/time-units.js';
import { dayPassedMs } from '../times/clock-days.js';
import { parseClock, parseDateTime } from '../times/time-text.js';
import { cellOf, type Cells } from './event-columns.js';
import type { TimeColumns } from './event-table.js';
import type { TimeFormat } from '../../model/log-file.js';

/** Nights are written under the day they begin: before this clock the day shift has not begun (common practice). */
const nightEndMs = 6 * 3_600_000;

/**
 * The dates of a list in which a date stands beside the first of its rows and is left blank below, as people write it and
 * as merged cells of a spreadsheet come out.
 */
export class HeldDates {
  /** Rows that were given the date of a row above. */
  count = 0;
  /** Of these those that were given the day after it, since midnight lies between. */
  afterMidnight = 0;
  private last = '';
  private lastClockMs = NaN;
  private isNextDay = false;

  /**
   * @param start The columns of a row's time; without a clock beside the date nothing is held.
   * @param order How dates are written, where rows come in the order of time and so may pass midnight; else null.
   */
  constructor(
    private readonly start: TimeColumns,
    private readonly order: TimeFormat['order'] | null = null,
  ) {}

  /** @param cells Of the next row. @returns Them with their date: a row that has one, or no clock, stays as it is. */
  fill(cells: Cells): Cells {
    const [date, clock] = this.start;
    if (clock === undefined) return cells;
    const own = cellOf(cells, date);
    const clockMs = parseClock(cellOf(cells, clock))?.ms ?? NaN;
    if (own !== '') {
      this.last = own;
      this.isNextDay = false;
    } else this.isNextDay ||= clockMs < nightEndMs && this.lastClockMs - clockMs > dayPassedMs;
    if (!Number.isNaN(clockMs)) this.lastClockMs = clockMs;
    if (own !== '' || this.last === '' || cellOf(cells, clock) === '') return cells;
    this.count++;
    return cells.with(date, this.isNextDay ? this.dayAfter() : this.last);
  }

  private dayAfter(): string {
    const day = this.order && parseDateTime(this.last, this.order);
    if (!day) return this.last;
    this.afterMidnight++;
    return new Date(day.ms + DAY_MS).toISOString().slice(0, 10);
  }
}
