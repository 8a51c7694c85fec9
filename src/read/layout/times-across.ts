import type { RowForm } from '../../model/log-file.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { parseClock, parseDateTime } from '../times/time-text.js';

type Transposed = Extract<RowForm, { kind: 'transposed' }>;

/** So many times in one line are no line of a log (own choice). */
const fewestAcross = 4;
/** Columns of names, units and the like that stand before the times (own choice). */
const mostNameColumns = 4;

/** Where the times of a sheet stand side by side in one line, with the names down; null for any other. Never throws. */
export function timesAcross(rows: readonly SampledRow[]): Transposed | null {
  const head = rows.filter(({ stretch }) => stretch === 0);
  const at = head.findIndex(({ cells }) => cells.filter(isTime).length >= Math.max(fewestAcross, cells.length / 2));
  const row = head[at];
  if (!row) return null;
  const firstColumn = row.cells.findIndex(isTime);
  if (firstColumn < 1 || firstColumn > mostNameColumns) return null;
  const above = head[at - 1];
  const isClock = row.cells.slice(firstColumn).every((cell) => !isMoment(cell));
  const dates = above?.cells.slice(firstColumn).filter((cell) => cell.trim() !== '') ?? [];
  const hasDates = isClock && dates.length > 0 && dates.every(isMoment);
  return { kind: 'transposed', timeLine: row.line, dateLine: hasDates ? above!.line : 0, firstColumn };
}

function isTime(cell: string): boolean {
  return (/\d[:.h]\d/.test(cell) && isMoment(cell)) || (/^\s*\d{1,2}:\d{2}/.test(cell) && parseClock(cell) !== null);
}

/** A date, with or without a clock. */
function isMoment(cell: string): boolean {
  return (['ymd', 'dmy', 'mdy'] as const).some((order) => parseDateTime(cell.trim(), order) !== null);
}
