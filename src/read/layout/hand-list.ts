import type { LogFile } from '../../model/log-file.js';
import { plainList } from '../events/by-hand/plain-list.js';
import { listHeaderAt } from '../events/list-header.js';
import type { EventFileKind } from '../events/event-table.js';
import { recogniseEvents, rolesOfName } from '../events/recognise.js';
import { splitName } from '../names/column-name.js';
import type { SampledRow } from '../sources/sampled-row.js';

const words = { alarm: 'a list of alarms', maintenance: 'a list of work done', stops: 'a list of stops' } as const;
const notKnown = { startMs: NaN, endMs: NaN };
/** Rows from which is told what the columns hold. */
const rowsLookedAt = 200;

/**
 * Tells a list that people keep from its own names: begin and end, or a length, or the work, beside a text, and no values.
 *
 * @param called What the file's name says that it lists; null = nothing.
 * @returns Its kind and why; null where the rows are no such list. Never throws.
 */
export function handListOf(
  rows: readonly SampledRow[],
  called: EventFileKind | null,
): Pick<LogFile, 'kind' | 'why'> | null {
  const cells = rows.filter(({ stretch }) => stretch === 0).map((row) => row.cells);
  const at = listHeaderAt(cells);
  const header = cells[at];
  if (!header || header.some((name) => rolesOfName(name).whole.includes('value'))) return null;
  if (header.filter(isMeasured).length > 1) return null;
  const list = plainList({
    ...{ header, rows: cells.slice(at + 1, at + 1 + rowsLookedAt), above: cells.slice(0, at) },
    log: notKnown,
  });
  const found = recogniseEvents(list.header, list.rows, called);
  if (!found) return null;
  const { end, duration, done, state } = found.columns;
  const isCertain = (end ?? duration ?? done ?? state) !== undefined || found.kind === called;
  return isCertain ? { kind: found.kind, why: words[found.kind] } : null;
}

/** A temperature, a reading, a set point or an output: one may stand in a list, several make a log. */
function isMeasured(name: string): boolean {
  const { meaning } = splitName(name);
  return meaning === 'temperature' || meaning === 'reading' || meaning === 'setpoint' || meaning === 'output';
}

/** Whether the names of a list stand elsewhere than where a header was found. */
export function isOtherHeader(rows: readonly SampledRow[], header: readonly string[]): boolean {
  const cells = rows.map((row) => row.cells);
  return cells[listHeaderAt(cells)]?.join() !== header.join();
}
