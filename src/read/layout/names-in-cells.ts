import { plainWords, valueNames } from '../names/role-words.js';
import type { SampledRow } from '../sources/sampled-row.js';
import type { ColumnFacts } from './column-facts.js';
import { saysQuality } from './own-qualities.js';

/**
 * Gives values the names that stand in every row beside them: "time; TagA; QualityA; ValueA; TagB; QualityB; ValueB",
 * where the cells of TagA all hold "Zone 1 PV".
 *
 * @returns The header as it is where values have names of their own, or fewer than two are named so. Never throws.
 */
export function namesInCells(
  header: readonly string[],
  columns: readonly ColumnFacts[],
  rows: readonly SampledRow[],
): string[] {
  const named = [...header];
  const given = new Set<string>();
  let name = '';
  for (const [column, facts] of columns.entries()) {
    if (isName(facts, rows.length)) name = rows[0]!.cells[column]!.trim();
    else if (name !== '' && saysQuality(header[column]!, facts)) named[column] = `${name} quality`;
    else if (name !== '' && facts.numbers > 0) {
      if (!isPlainValue(header[column]!) || given.has(name)) return [...header];
      named[column] = name;
      given.add(name);
      name = '';
    }
  }
  return given.size > 1 ? named : [...header];
}

/** One text in all rows, with letters in it. */
function isName(
  { distinct, filled, numbers, openTexts, runningWords, isQuality }: ColumnFacts,
  rowCount: number,
): boolean {
  return distinct === 1 && filled === rowCount && numbers + openTexts + runningWords === 0 && !isQuality;
}

/** "Value", "Value (2)", "ValueB", "Wert3". */
function isPlainValue(name: string): boolean {
  return valueNames.test(plainWords(name.replace(/ \(\d+\)$/, '').replace(/(?<=\p{Ll})[ _.-]?(?:\p{Lu}|\d+)$/u, '')));
}
