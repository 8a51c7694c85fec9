import { cellMark, type Dialect } from '../../model/log-file.js';
import { isBadQuality, readCell, readRunningWord } from '../rows/cell-value.js';
import type { SampledRow } from '../sources/sampled-row.js';

/** What the sampled cells of one column hold. */
export interface ColumnFacts {
  readonly filled: number;
  readonly numbers: number;
  readonly openTexts: number;
  readonly distinct: number;
  readonly runningWords: number;
  readonly isQuality: boolean;
  /** True for numbers that are all OPC classic status codes, good ones among them. */
  readonly isStatusNumber: boolean;
}

/** Looks at the sampled cells of one column; blank ones do not count. */
export function factsOf(rows: readonly SampledRow[], column: number, dialect: Dialect): ColumnFacts {
  const cells = rows.map((row) => row.cells[column]?.trim() ?? '').filter((cell) => cell !== '');
  const marks = cells.map((cell) => readCell(cell, dialect).mark);
  const distinct = new Set(cells);
  const words = cells.filter((cell) => /\p{L}/u.test(cell) && !Number.isNaN(readRunningWord(cell))).length;
  const qualityWords = [...distinct].filter((cell) =>
    /^(good|bad|uncertain|gut|ok|valid|invalid)\b/i.test(cell),
  ).length;
  return {
    filled: cells.length,
    numbers: marks.filter((mark) => mark === cellMark.number).length,
    openTexts: marks.filter((mark) => mark === cellMark.openText).length,
    distinct: distinct.size,
    runningWords: words,
    isStatusNumber: distinct.has('192') && [...distinct].every((cell) => statusNumbers.has(cell)),
    isQuality:
      distinct.size > 0 && qualityWords >= distinct.size / 2 && qualityWords > 0 && isKnownQuality([...distinct]),
  };
}

/** Bad, uncertain and good with their usual sub-states (OPC classic data access, from memory). */
const statusNumbers = new Set([
  '0',
  '4',
  '8',
  '12',
  '16',
  '20',
  '24',
  '28',
  '64',
  '68',
  '80',
  '84',
  '88',
  '192',
  '216',
]);

function isKnownQuality(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[a-z ,_-]+$/i.test(cell) || isBadQuality(cell, false));
}
