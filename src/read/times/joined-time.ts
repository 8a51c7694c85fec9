import { parseClock } from './time-text.js';

/** Reads a date and a clock that stood apart and were put together as text; the date is remembered. */
export class JoinedTime {
  private lastDate = '';
  private lastDateMs = NaN;

  /** @param readTimeCell Reads any time or date of the file. */
  constructor(private readonly readTimeCell: (cell: string) => number) {}

  /** Clock of the two, NaN when they are no time. */
  read(joined: string): number {
    const cut = joined.lastIndexOf(' ');
    const date = joined.slice(0, cut);
    const clock = parseClock(joined.slice(cut + 1));
    if (!clock || cut < 0 || / [ap]\.?m\.?$/i.test(joined)) return this.readTimeCell(joined);
    if (date !== this.lastDate) {
      this.lastDate = date;
      this.lastDateMs = this.readTimeCell(date);
    }
    return this.lastDateMs + clock.ms;
  }
}
