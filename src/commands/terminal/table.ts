import { cutText, textWidth } from './text-width.js';

export interface Column {
  readonly head: string;
  /** Numbers stand right. */
  readonly align?: 'left' | 'right';
  /** Never narrower than this; 6 unless given. */
  readonly least?: number;
}

const between = '  ';

/**
 * A table that fits the width: columns take what their cells need, and when that is too much the widest is cut first.
 *
 * @param rows Cells as plain text without colour or line breaks.
 * @returns Lines without a line end; the head first. No line is wider than `width` unless the least widths are.
 */
export function tableLines(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly string[] {
  const widths = fittedWidths(columns, rows, width);
  const line = (cells: readonly string[]): string =>
    columns
      .map(({ align }, i) => padded(cutText(cells[i] ?? '', widths[i]!), widths[i]!, align ?? 'left'))
      .join(between)
      .trimEnd();
  return [line(columns.map(({ head }) => head)), ...rows.map(line)];
}

function fittedWidths(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): number[] {
  const widths = columns.map(({ head }, i) =>
    rows.reduce((most, row) => Math.max(most, textWidth(row[i] ?? '')), textWidth(head)),
  );
  const room = width - between.length * (columns.length - 1);
  const least = columns.map((column) => column.least ?? 6);
  for (let total = sum(widths); total > room; total--) {
    const widest = widths.reduce(
      (best, value, i) => (value > least[i]! && (best < 0 || value > widths[best]!) ? i : best),
      -1,
    );
    if (widest < 0) break;
    widths[widest]!--;
  }
  return widths;
}

function padded(text: string, width: number, align: 'left' | 'right'): string {
  const blanks = ' '.repeat(Math.max(0, width - textWidth(text)));
  return align === 'left' ? text + blanks : blanks + text;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
