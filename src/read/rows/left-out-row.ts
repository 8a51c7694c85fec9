import { cellMark, type LogFile } from '../../model/log-file.js';
import type { TableCell } from '../sources/table-part.js';
import type { OddCells } from './odd-cells.js';
import { act, type RowPlan } from './row-plan.js';
import type { RejectReason } from './row-tally.js';

/** Why a row of cells holds no row of the log, as far as its shape tells; null = it may hold one. */
export function whyNoRow(
  cells: readonly TableCell[],
  { header, rowWidth }: Pick<LogFile, 'header' | 'rowWidth'>,
  columnCount: number,
): RejectReason | null {
  if (cells.every(isBlankCell)) return 'blank-row';
  if (isHeader(cells, header)) return 'repeated-header';
  if (cells.length < rowWidth) return 'short-row';
  return cells.length > columnCount && !cells.slice(columnCount).every(isBlankCell) ? 'long-row' : null;
}

/**
 * "06:00;STATE CHANGE;IDLE -> RUN" among rows of numbers: no input that broke, which some word or number would tell.
 * One text in all columns is a code that nobody knows yet.
 */
export function isTextRow(cells: readonly TableCell[], { actions, columnCount }: RowPlan, odd: OddCells): boolean {
  const texts = new Set<string>();
  for (let c = 0; c < columnCount; c++) {
    if (actions[c] !== act.number) continue;
    const cell = cells[c] ?? '';
    if (typeof cell === 'number') return false;
    if (cell.trim() === '') continue;
    if (odd.valueOfText(cell).mark !== cellMark.otherText || odd.isBadText(cell)) return false;
    texts.add(cell.trim());
  }
  return texts.size > 1;
}

function isHeader(cells: readonly TableCell[], header: readonly string[]): boolean {
  return cells.length > 1 && String(cells[0]).trim() === header[0] && String(cells[1]).trim() === header[1];
}

function isBlankCell(cell: TableCell): boolean {
  return typeof cell === 'string' && cell.trim() === '';
}
