import type { Dialect } from '../../model/log-file.js';
import { namesOverBlanks } from './blank-names.js';
import { factsOf } from './column-facts.js';
import { usualCount } from './dialect.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { FileShape } from './file-shape.js';
import { findStart, fullHeader } from './header-rows.js';
import { namesInCells } from './names-in-cells.js';
import { findLong } from './long-columns.js';
import { intervalAbove, startAbove } from '../times/start-above.js';
import { findClockAlone, findTime } from './time-columns.js';
import { columnsOfTime } from '../times/time-cell.js';
import type { TimeOptions } from '../times/time-format.js';
import { inUtc } from '../times/utc-names.js';

/** Finds header, data and times in sampled rows; null with a reason when there is no column of times. */
export function findShape(
  rows: readonly SampledRow[],
  dialect: Dialect,
  options: TimeOptions & { readonly fileName: string; readonly names?: readonly string[] | undefined },
): FileShape | string {
  const found = findStart(rows);
  if (!found) return 'no rows with at least two cells, one of them a time or a number, were found';
  const data = rows.filter((row) => row.stretch > 0 || row.line >= found.firstDataLine);
  const width = usualCount(data.map((row) => row.cells.length));
  const whole = data.filter((row) => row.cells.length === width);
  const start = dialect.separator === ' ' ? { ...found, ...namesOverBlanks(found, whole, width) } : found;
  const full = data.filter((row) => row.cells.length >= Math.min(width, start.header?.length ?? width));
  const names = options.names?.length === width ? options.names : undefined;
  const given = fullHeader(start.header, names, width);
  const hasNames = start.header !== null || names !== undefined;
  const { preamble } = start;
  const count = { start: startAbove(preamble, options.fileName, options), intervalMs: intervalAbove(preamble) };
  const decimal = dialect.decimal;
  const { units } = start;
  const time = findTime(full, given, { ...options, decimal, hasNames, count, units }) ?? findClockAlone(full, given);
  if (!time) return 'no column holds times';
  const timeNames = [...columnsOfTime(time)].map((column) => given[column] ?? '');
  const columns = given.map((_, index) => factsOf(full, index, dialect));
  const header = namesInCells(given, columns, full);
  const rowWidth = Math.min(width, header.length);
  const base = { ...start, hasHeader: start.header !== null, header, rowWidth, rows: full, columns, ...time };
  const stated = { ...base, time: inUtc(time.time, timeNames, preamble) };
  return { ...stated, ...findLong(stated, full) };
}
