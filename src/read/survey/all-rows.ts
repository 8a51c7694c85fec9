import { splitCells } from '../layout/dialect.js';
import { isTable, readTable } from '../sources/read-table.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { RowSource } from '../sources/table-part.js';
import { readLines } from '../sources/text-source.js';

/** Every row of a file as cells, from its first row of data on. Throws LogProblem when it cannot be read further. */
export async function* allRows(source: RowSource, firstDataLine: number): AsyncGenerator<SampledRow> {
  if (isTable(source)) {
    for await (const { line, cells } of readTable(source)) if (line >= firstDataLine) yield { stretch: 0, line, cells };
    return;
  }
  for await (const { number, text } of readLines(source, source.encoding))
    if (number >= firstDataLine) yield { stretch: 0, line: number, cells: splitCells(text, source.dialect) };
}
