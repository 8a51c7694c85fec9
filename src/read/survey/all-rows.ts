import type { LogFile } from '../../model/log-file.js';
import { splitCells } from '../layout/dialect.js';
import type { SampledRow } from '../sources/sampled-row.js';
import { readTable } from '../sources/table-source.js';
import { readLines } from '../sources/text-source.js';

/** What is needed to read a file that is only known from its sample. */
export type RowSource = Pick<LogFile, 'name' | 'path' | 'part' | 'container' | 'encoding' | 'dialect' | 'sizeBytes'>;

/** Every line of a file as cells, from its first row of data on. Throws LogProblem when it cannot be read further. */
export async function* allRows(source: RowSource, firstDataLine: number): AsyncGenerator<SampledRow> {
  const { container, dialect, encoding } = source;
  if (container === 'workbook' || container === 'parquet') {
    for await (const { firstLine, rows } of readTable(source))
      for (const [i, cells] of rows.entries())
        if (firstLine + i >= firstDataLine) yield { stretch: 0, line: firstLine + i, cells };
    return;
  }
  for await (const { number, text } of readLines(source, encoding))
    if (number >= firstDataLine) yield { stretch: 0, line: number, cells: splitCells(text, dialect) };
}
