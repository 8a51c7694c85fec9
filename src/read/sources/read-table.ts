import { readAssignments } from './assignment-rows.js';
import { readJson } from './json-rows.js';
import { readMessages } from './message-rows.js';
import type { OnBadRow } from './records.js';
import type { SampledRow } from './sampled-row.js';
import { readSections } from './section-rows.js';
import { readSideBySide } from './side-by-side-rows.js';
import type { RowSource, TablePart } from './table-part.js';
import { readTransposed } from './transposed-rows.js';
import { readParquet, readSheet } from './table-source.js';

/** Whether a file is read as a table: its rows are no lines of a text that are cut into cells. */
export function isTable({ container, form }: Pick<RowSource, 'container' | 'form'>): boolean {
  return form !== undefined || container === 'workbook' || container === 'parquet';
}

/** All rows of a table, the header among them, in parts that fit the memory. Throws LogProblem. */
export async function* readTableParts(
  source: RowSource,
  onBadRow: OnBadRow = () => undefined,
): AsyncGenerator<TablePart> {
  const { form, container } = source;
  if (form?.kind === 'json') yield* readJson(source, form, onBadRow);
  else if (form?.kind === 'assignments') yield* readAssignments(source, form, onBadRow);
  else if (form?.kind === 'messages') yield* readMessages(source, onBadRow);
  else if (form?.kind === 'side-by-side') yield* readSideBySide(source, form, onBadRow);
  else if (form?.kind === 'sections') yield* readSections(source, form, onBadRow);
  else if (form?.kind === 'transposed') yield* readTransposed(source, form, onBadRow);
  else if (container === 'parquet') yield* readParquet(source.path);
  else yield* readSheet(source);
}

/** A row, every cell as a text. */
export interface TextRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** Like {@link readTableParts}, row by row and every cell as a text. Throws LogProblem. */
export async function* readTable(source: RowSource, onBadRow?: OnBadRow): AsyncGenerator<TextRow> {
  yield* asTexts(readTableParts(source, onBadRow));
}

async function* asTexts(parts: AsyncIterable<TablePart>): AsyncGenerator<TextRow> {
  for await (const { count, lineOf, cellsOf } of parts)
    for (let row = 0; row < count; row++) yield { line: lineOf(row), cells: cellsOf(row).map(String) };
}

const sampledEnds = { first: 400, last: 300 };
/** Rows of a time each stand for one value only there, and there are as many as values (own choice). */
const formedEnds = { first: 2000, last: 1000 };

/** Of a file of parts the beginning of each is looked at, of the first ones (own choice). */
const sampledParts = { count: 200, rows: 60 };

/** Rows of a table as a sample: all of its beginning, some of its end, and some of each part that it has. */
export async function sampleTable(source: RowSource): Promise<SampledRow[]> {
  const { first, last } = source.form ? formedEnds : sampledEnds;
  const isParquet = source.container === 'parquet' && !source.form;
  const rows = isParquet ? asTexts(readParquet(source.path, sampledEnds)) : readTable(source);
  const beginning: SampledRow[] = [];
  const end: SampledRow[] = [];
  const parts = new PartBeginnings(source.form);
  let count = 0;
  for await (const { line, cells } of rows) {
    const isFirst = count++ < first;
    if (cells.every((cell) => cell === '')) continue;
    const part = parts.partOf(line);
    if (isFirst) beginning.push({ stretch: 0, line, cells });
    else if (part > 0) beginning.push({ stretch: part, line, cells });
    else end.push({ stretch: sampledParts.count, line, cells });
    if (end.length > 2 * last) end.splice(0, end.length - last);
  }
  return [...beginning, ...end.slice(-last)];
}

/** Tells which rows begin a part of a file. */
class PartBeginnings {
  private readonly starts: readonly number[];
  private part = 0;
  private rows = 0;

  constructor(form: RowSource['form']) {
    this.starts = form?.kind === 'sections' ? form.sections.slice(0, sampledParts.count).map((it) => it.firstRow) : [];
  }

  /** Number of the part whose beginning the next row is of; 0 = of none. */
  partOf(line: number): number {
    while (this.part < this.starts.length && this.starts[this.part]! <= line) {
      this.part++;
      this.rows = 0;
    }
    return this.part > 0 && this.rows++ < sampledParts.rows ? this.part : 0;
  }
}
