import type { EventColumns } from './event-table.js';
import type { TimeOptions } from '../times/time-format.js';
import { momentReader, type Cells, type MomentReader } from './event-columns.js';

/** A list is kept for the weeks of the log and a little around them. */
const aroundMs = 86_400_000;
/** So many more times of one order must fall into the log (own choice). */
const timesMore = 2;

/** First and last sample of the temperature logs, UTC ms; NaN = not known. */
export interface LogSpan {
  readonly start: number;
  readonly end: number;
}

/**
 * As {@link momentReader}; where nothing in the list tells day from month, the order is taken with which its times fall
 * into those of the temperature log.
 */
export function momentsNearLog(
  columns: EventColumns,
  samples: readonly Cells[],
  toUtc: (clockMs: number) => number,
  options: TimeOptions,
  log: LogSpan,
): MomentReader | null {
  const found = momentReader(columns, samples, toUtc, options);
  if (!found?.format.isUndecided || Number.isNaN(log.start)) return found;
  const [dayFirst, monthFirst] = (['day-first', 'month-first'] as const).map((dates) => ({
    dates,
    inside: insideLog(columns, samples, { ...options, dates }, log),
  }));
  const [most, least] = dayFirst!.inside >= monthFirst!.inside ? [dayFirst!, monthFirst!] : [monthFirst!, dayFirst!];
  if (most.inside <= timesMore * least.inside) return found;
  const settled = momentReader(columns, samples, toUtc, { ...options, dates: most.dates })!;
  const why = `${most.dates.replace('-', ' ')}: so its times fall into those of the temperature log`;
  return { ...settled, format: { ...settled.format, why } };
}

function insideLog(columns: EventColumns, samples: readonly Cells[], options: TimeOptions, { start, end }: LogSpan) {
  // The clock as it stands: hours do not matter here, and a clock that is turned into UTC must see its rows once only.
  const reader = momentReader(columns, samples, (clockMs) => clockMs, options);
  const times = samples.map((cells) => reader?.start(cells) ?? NaN);
  return times.filter((ms) => ms >= start - aroundMs && ms <= end + aroundMs).length;
}
