import { cellMark, type Dialect } from '../../model/log-file.js';
import { isBadQuality, readCell, readRunningWord } from '../rows/cell-value.js';
import { readFlagWord } from '../rows/flag-cell.js';
import type { SampledRow } from '../sources/sampled-row.js';

/** What the sampled cells of one column hold. */
export interface ColumnFacts {
  readonly filled: number;
  readonly numbers: number;
  readonly openTexts: number;
  readonly distinct: number;
  readonly runningWords: number;
  /** Noughts and ones, and words that alarm flags hold. */
  readonly flags: number;
  readonly isQuality: boolean;
  /** True for numbers that are all OPC classic status codes, good ones among them. */
  readonly isStatusNumber: boolean;
}

/** Looks at the sampled cells of one column; blank ones do not count. */
export function factsOf(rows: readonly SampledRow[], column: number, dialect: Dialect): ColumnFacts {
  const times = new Map<string, number>();
  for (const row of rows) {
    const cell = row.cells[column]?.trim() ?? '';
    if (cell !== '') times.set(cell, (times.get(cell) ?? 0) + 1);
  }
  const distinct = [...times.keys()];
  // Each text is looked at once: readings repeat themselves, set points hardly change.
  const count = (isMeant: (cell: string) => boolean): number =>
    distinct.reduce((sum, cell) => (isMeant(cell) ? sum + times.get(cell)! : sum), 0);
  const marks = new Map(distinct.map((cell) => [cell, readCell(cell, dialect).mark]));
  const qualityWords = distinct.filter((cell) => /^(good|bad|uncertain|gut|ok|valid|invalid)\b/i.test(cell)).length;
  return {
    filled: count(() => true),
    numbers: count((cell) => marks.get(cell) === cellMark.number),
    openTexts: count((cell) => marks.get(cell) === cellMark.openText),
    distinct: distinct.length,
    runningWords: count((cell) => /\p{L}/u.test(cell) && !Number.isNaN(readRunningWord(cell))),
    flags: count((cell) => cell === '0' || cell === '1' || !Number.isNaN(readFlagWord(cell))),
    isStatusNumber: times.has('192') && distinct.every((cell) => statusNumbers.has(cell)),
    isQuality: qualityWords > 0 && qualityWords >= distinct.length / 2 && isKnownQuality(distinct),
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
  return cells.every((cell) => /^[a-z ,_-]+$/i.test(cell) || isBadQuality(cell, 'opc'));
}
