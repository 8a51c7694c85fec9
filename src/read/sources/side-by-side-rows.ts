import type { RowForm, SideBlock } from '../../model/log-file.js';
import { recordsOf } from './record-rows.js';
import type { OnBadRow } from './records.js';
import { inParts, type RowSource, type TableCell, type TablePart, type TableRow } from './table-part.js';

type SideBySide = Extract<RowForm, { kind: 'side-by-side' }>;

/** Names of what each block of columns is made into. */
const header = ['time', 'tag', 'value', 'quality'] as const;

/** Every block of every row as rows of its own: time, tag, value and quality. Blocks that have come to their end give none. */
export function readSideBySide(source: RowSource, form: SideBySide, onBadRow: OnBadRow): AsyncGenerator<TablePart> {
  return inParts(unfolded(recordsOf(source, onBadRow), form));
}

async function* unfolded(rows: AsyncIterable<TableRow>, { firstLine, blocks }: SideBySide): AsyncGenerator<TableRow> {
  const hasQuality = blocks.some(({ quality }) => quality >= 0);
  yield { line: 0, cells: hasQuality ? header : header.slice(0, 3) };
  for await (const { line, cells } of rows)
    if (line >= firstLine) for (const block of blocks) yield* blockRows(line, cells, block, hasQuality);
}

function* blockRows(
  line: number,
  cells: readonly TableCell[],
  { time, values, tags, quality }: SideBlock,
  hasQuality: boolean,
): Generator<TableRow> {
  const text = time
    .map((column) => String(cells[column] ?? '').trim())
    .join(' ')
    .trim();
  if (text === '' && values.every((column) => isBlank(cells[column]))) return;
  const worth = hasQuality ? [cells[quality] ?? ''] : [];
  for (const [i, column] of values.entries()) yield { line, cells: [text, tags[i]!, cells[column] ?? '', ...worth] };
}

function isBlank(cell: TableCell | undefined): boolean {
  return cell === undefined || (typeof cell === 'string' && cell.trim() === '');
}
