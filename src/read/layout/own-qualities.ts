import { looseName, splitName } from '../names/column-name.js';
import { plainWords, qualityNames } from '../names/role-words.js';
import { saysAlarm } from '../names/flag-names.js';
import type { ColumnFacts } from './column-facts.js';

/** A column that says what the values of another are worth. */
export interface OwnQuality {
  readonly column: number;
  readonly ofColumn: number;
}

/**
 * Pairs the qualities of a wide file with the columns they speak of: by the name both carry, else each with the column
 * before it. Empty where one without a name of its own holds for the whole row, or none is there.
 *
 * @param others Columns that hold no time.
 */
export function ownQualities(
  header: readonly string[],
  columns: readonly ColumnFacts[],
  others: readonly number[],
): OwnQuality[] {
  const found = others.filter((column) => saysQuality(header[column]!, columns[column]!));
  const isOfRow = found.length === 1 && splitName(header[found[0]!]!).rest === '';
  if (isOfRow) return [];
  const values = others.filter((column) => !found.includes(column) && columns[column]!.numbers > 0);
  return found.flatMap((column) => {
    const ofColumn = namedWith(header, column, values) ?? values.findLast((value) => value < column);
    return ofColumn === undefined ? [] : [{ column, ofColumn }];
  });
}

/** A quality by its words, or by status numbers below a name that says so. */
export function saysQuality(name: string, { isQuality, isStatusNumber, flags, filled }: ColumnFacts): boolean {
  if (saysAlarm(name) === 2 && flags === filled) return false;
  if (isQuality) return true;
  const words = plainWords(name.replace(/ \(\d+\)$/, ''));
  return (
    isStatusNumber && (qualityNames.test(words) || splitName(name).meaning === 'quality' || / status$/.test(words))
  );
}

/** "Z1 PV quality" speaks of "Z1 PV", "Z1 quality" of the first column of Z1. */
function namedWith(header: readonly string[], column: number, values: readonly number[]): number | undefined {
  const words = looseName(splitName(header[column]!).rest);
  const spoken = looseName(header[column]!);
  if (words === '') return undefined;
  const isPrefix = (value: number): boolean => spoken.startsWith(looseName(header[value]!.replace(/\(.*/, '')));
  return values.find(isPrefix) ?? values.find((value) => looseName(splitName(header[value]!).rest) === words);
}
