import type { RowForm, Section } from '../../model/log-file.js';
import { recordsOf } from './record-rows.js';
import type { OnBadRow } from './records.js';
import { inParts, type RowSource, type TableCell, type TablePart, type TableRow } from './table-part.js';

type Sections = Extract<RowForm, { kind: 'sections' }>;

/** Every row with what its part says above it in front; lines that say so, and headers, give none. */
export function readSections(source: RowSource, form: Sections, onBadRow: OnBadRow): AsyncGenerator<TablePart> {
  return inParts(unfolded(recordsOf(source, onBadRow), form));
}

async function* unfolded(rows: AsyncIterable<TableRow>, form: Sections): AsyncGenerator<TableRow> {
  const { sections, names, above, headerLine } = form;
  let at = -1;
  let isHeaderGiven = false;
  for (const text of above) yield { line: 0, cells: [text] };
  for await (const row of rows) {
    while (at + 1 < sections.length && sections[at + 1]!.fromLine <= row.line) at++;
    const section = sections[at];
    if (!isHeaderGiven && row.line >= headerLine) {
      isHeaderGiven = true;
      yield { line: headerLine, cells: names };
    }
    if (section === undefined) {
      if (row.line < headerLine) yield row;
    } else if (row.line >= section.firstRow) yield { line: row.line, cells: cellsOf(row.cells, section, names.length) };
  }
}

/** In the order of all names; a row with more cells than names keeps them, so that it is told. */
function cellsOf(cells: readonly TableCell[], { labels, columns }: Section, width: number): TableCell[] {
  const found = new Array<TableCell>(width).fill('');
  labels.forEach((label, i) => (found[i] = label));
  cells.forEach((cell, i) => {
    if (i < columns.length) found[labels.length + columns[i]!] = cell;
    else found.push(cell);
  });
  return found;
}
