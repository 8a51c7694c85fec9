import type { LogFile, NoValue, WideBatch } from '../../model/log-file.js';
import { cellMark } from '../../model/log-file.js';
import type { ProblemNote } from '../../model/problem.js';
import { feedRows, type FeedOptions } from './row-feed.js';
import { RowScanner } from './row-scanner.js';
import type { RowTally } from './row-tally.js';

/** Rows in a batch: more make fewer blocks for what is behind; beyond this only memory grows (measured from 256 to 4096). */
export const batchRows = 4096;

/** Reads a wide file as batches of columns. The batch is used again: take what you need before asking for the next. */
export async function* readWide(
  file: LogFile,
  tally: RowTally,
  problems: ProblemNote[],
  options: FeedOptions = {},
): AsyncGenerator<WideBatch> {
  const scanner = new RowScanner(file, batchRows);
  const clockMs = new Float64Array(batchRows);
  const line = new Float64Array(batchRows);
  const { store } = scanner;
  const batch: WideBatch = {
    length: 0,
    clockMs,
    values: store.values,
    marks: store.marks,
    line,
    get hasMarks() {
      return store.hasMarks;
    },
  };
  const takeRow = (lineNumber: number, at: number): number => {
    clockMs[at] = scanner.clockMs;
    line[at] = lineNumber;
    if (scanner.quality.isAnyBad) {
      store.hasMarks = true;
      scanner.quality.mark(store.values, store.marks, at);
    }
    if (file.noValue && isWithoutValue(scanner, file.noValue, at)) markWithoutValue(scanner, file.noValue, at);
    batch.length = at + 1;
    return at + 1;
  };
  const isFull = (at: number): boolean => at === batchRows;
  for await (const full of feedRows({ batch, takeRow, isFull }, file, scanner, tally, problems, options)) {
    yield full;
    full.length = 0;
  }
  if (batch.length > 0) yield batch;
}

/** Share of the columns of other quantities that lack a value at once when it is the recording that lacks it (own choice). */
const sharedShare = 0.5;

function isWithoutValue(scanner: RowScanner, { raw, columns }: NoValue, at: number): boolean {
  let count = 0;
  for (const column of columns) if (scanner.store.values[column]![at] === raw) count++;
  return count >= sharedShare * columns.length;
}

function markWithoutValue(scanner: RowScanner, { raw }: NoValue, at: number): void {
  scanner.store.hasMarks = true;
  scanner.store.values.forEach((values, column) => {
    if (values?.[at] !== raw) return;
    const marks = scanner.store.marks[column];
    if (marks) marks[at] = cellMark.noValue;
    else values[at] = NaN; // a set point or output that is not known
  });
}
