import type { MaintenanceRow, StopRow } from '../../model/event-rows.js';
import type { RowTaker } from './alarm-rows.js';
import { headerUnitMs, parseDurationMs, secondPartMs } from './duration.js';
import { cellOf, type Cells, type MomentReader } from './event-columns.js';
import type { EventTable } from './event-table.js';
import { farMs } from '../times/home-times.js';

/** A plain number in a stop list's duration column counts minutes unless its header says otherwise; common practice. */
const PLAIN_STOP_MS = 60_000;

/** Makes the reader of a maintenance list's rows. */
export function maintenanceRowTaker({ columns }: EventTable, moments: MomentReader, rows: MaintenanceRow[]): RowTaker {
  return (cells) => {
    const timeMs = moments.start(cells);
    if (Number.isNaN(timeMs)) return 'no time that can be read';
    const row = {
      timeMs,
      zone: cellOf(cells, columns.zone) || cellOf(cells, columns.source),
      machine: cellOf(cells, columns.machine),
      done: cellOf(cells, columns.done) || cellOf(cells, columns.message),
      found: cellOf(cells, columns.found) || cellOf(cells, columns.reason),
    };
    if (row.done === '' && row.found === '') return 'no text';
    rows.push(row);
    return null;
  };
}

/**
 * Makes the reader of a stop list's rows. A stop without an end keeps NaN; one that lasts for years has a wrong year, and
 * one with a day in place of a time has no place in the log.
 *
 * @param samples Rows of the list, from which is told whether "0:20" is 20 minutes.
 */
export function stopRowTaker(
  { columns, header }: EventTable,
  moments: MomentReader,
  rows: StopRow[],
  samples: readonly Cells[],
): RowTaker {
  const name = header[columns.duration ?? -1] ?? '';
  const plainMs = headerUnitMs(name) ?? PLAIN_STOP_MS;
  const secondMs = secondPartMs(
    name,
    samples.map((cells) => cellOf(cells, columns.duration)),
  );
  return (cells) => {
    const startMs = moments.start(cells);
    if (Number.isNaN(startMs)) return 'no time that can be read';
    if ((columns.end === undefined || columns.start.length === 2) && !moments.hasClock(cells))
      return 'a day without a time';
    const duration = cellOf(cells, columns.duration);
    const durationMs = parseDurationMs(duration, plainMs, secondMs);
    const namedEndMs = moments.end(cells);
    const endMs = Number.isNaN(namedEndMs) ? startMs + durationMs : namedEndMs;
    if (endMs - startMs > farMs) return 'its end is years from its start';
    rows.push({
      ...{ startMs, endMs },
      machine: cellOf(cells, columns.machine) || cellOf(cells, columns.source),
      reason: cellOf(cells, columns.reason) || cellOf(cells, columns.message) || cellOf(cells, columns.found),
      planned: cellOf(cells, columns.planned),
    });
    return null;
  };
}
