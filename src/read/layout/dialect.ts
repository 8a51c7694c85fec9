import type { Dialect } from '../../model/log-file.js';
import { unitTail } from '../rows/cell-value.js';
import { withoutFormulas } from '../sources/records.js';

type Separator = Dialect['separator'];
const separators: readonly Separator[] = ['\t', ';', '|', ',', ' '];

/** What the sample lines say about separators, or why they cannot say. */
export interface DialectFinding {
  readonly dialect: Dialect;
  /** Why it cannot be decided; null = decided. */
  readonly ambiguous: string | null;
}

/**
 * Finds separator, decimal mark, thousands mark and quote from some whole lines of a text. The separator is the one
 * that cuts most lines into the same number of cells; runs of blanks only count when nothing else does.
 *
 * @param lines Whole lines, as they stand; preamble lines do no harm.
 * @returns The dialect; one cell per line where no separator is found.
 */
export function detectDialect(lines: readonly string[]): DialectFinding {
  const filled = lines.filter((line) => line.trim() !== '');
  const quote = detectQuote(filled);
  const best = separators
    .map((separator) => ({ separator, score: separatorScore(filled, separator, quote) }))
    .reduce((a, b) => (b.score > a.score ? b : a), { separator: ',' as Separator, score: 0 });
  const rows = filled.map((line) => splitCells(line, { ...plain, separator: best.separator, quote }));
  const ambiguous = best.separator === ',' ? commaTrouble(rows) : null;
  const usual = usualRows(rows);
  const marks =
    groupedBy('.', usual) ?? groupedBy(',', usual) ?? numberMarks(usual.flat().slice(0, mostCells), best.separator);
  return { dialect: { separator: best.separator, quote, ...marks }, ambiguous };
}

/** Enough cells to tell how numbers are written. */
const mostCells = 4000;

const plain: Dialect = { separator: ',', decimal: '.', thousands: '', quote: '"' };

/** Single quotes only count where cells begin and end with them and no double quote is about. */
function detectQuote(lines: readonly string[]): Dialect['quote'] {
  const single = lines.filter((line) => /(^|[,;|\t])'[^']*'($|[,;|\t])/.test(line)).length;
  const double = lines.filter((line) => line.includes('"')).length;
  return single > double && single > lines.length / 2 ? "'" : '"';
}

/** Cells in agreement: lines with the usual number of cells, as a share, and a little for more cells. */
function separatorScore(lines: readonly string[], separator: Separator, quote: Dialect['quote']): number {
  const counts = lines.map((line) => countCells(line, separator, quote));
  const usual = usualCount(counts);
  if (usual < 2) return 0;
  const agreeing = counts.filter((count) => count === usual).length / counts.length;
  // A blank stands in dates, names and texts too, a comma in numbers: they need a better case than the others.
  const weight = separator === ' ' ? 0.3 : separator === ',' ? 0.75 : 1;
  const more = Math.min(0.1, usual / 1000);
  return weight * (agreeing * agreeing + more * agreeing);
}

/** As many as {@link splitCells} gives, without making them where no quote stands in the way. */
function countCells(line: string, separator: Separator, quote: Dialect['quote']): number {
  if (separator === ' ' || (quote !== '' && line.includes(quote)))
    return splitCells(line, { ...plain, separator, quote }).length;
  let count = 1;
  for (let at = line.indexOf(separator); at >= 0; at = line.indexOf(separator, at + 1)) count++;
  return count;
}

/** The most frequent count of two and more; the larger one when two are equally frequent. */
export function usualCount(counts: readonly number[]): number {
  const seen = new Map<number, number>();
  for (const count of counts) if (count >= 2) seen.set(count, (seen.get(count) ?? 0) + 1);
  let best = 1;
  let bestSeen = 0;
  for (const [count, times] of seen)
    if (times > bestSeen || (times === bestSeen && count > best)) [best, bestSeen] = [count, times];
  return best;
}

function usualRows(rows: readonly string[][]): string[][] {
  const usual = usualCount(rows.map((row) => row.length));
  return rows.filter((row) => row.length === usual);
}

/**
 * Cuts one line into cells, by the same rules as the file readers but for one line at a time.
 * Quotes that are doubled inside a quoted cell stand for one. Never throws.
 */
export function splitCells(text: string, dialect: Dialect): string[] {
  const { separator, quote } = dialect;
  const line = withoutFormulas(text, dialect);
  if (separator === ' ' && !line.includes(quote || '\0')) return line.trim().split(/[ \t]+/);
  if (!quote || !line.includes(quote)) return line.split(separator);
  const cells: string[] = [];
  let cell = '';
  let isQuoted = false;
  for (let i = 0; i < line.length; i++) {
    const char = line[i]!;
    if (isQuoted) {
      if (char !== quote) cell += char;
      else if (line[i + 1] === quote) cell += line[++i];
      else isQuoted = false;
    } else if (char === quote && cell.trim() === '') {
      isQuoted = true;
      cell = '';
    } else if (char === separator) {
      if (separator !== ' ' || cell !== '') cells.push(cell);
      cell = '';
    } else cell += char;
  }
  cells.push(cell);
  return cells;
}

/** Decimal and thousands marks from cells that look like numbers. */
export function numberMarks(cells: readonly string[], separator: Separator): Pick<Dialect, 'decimal' | 'thousands'> {
  const numbers = cells.map(plainNumber).filter((cell) => /^[-+]?\d[\d.,' \u00a0\u202f]*$/.test(cell));
  const decimalComma = numbers.filter((cell) => /^[-+]?\d+,\d+$/.test(cell) && !isGrouped(cell, ',')).length;
  const decimalPoint = numbers.filter((cell) => /^[-+]?\d+\.\d+$/.test(cell) && !isGrouped(cell, '.')).length;
  const both = numbers.find((cell) => cell.includes(',') && cell.includes('.'));
  const lastMark = both ? (both.lastIndexOf(',') > both.lastIndexOf('.') ? ',' : '.') : null;
  // "180,125" alone is a decimal comma only where commas do not part the cells and there are no points at all.
  const isOnlyComma = separator !== ',' && decimalPoint === 0 && numbers.some((cell) => /^[-+]?\d+,\d{3}$/.test(cell));
  const decimal = lastMark ?? (decimalComma > decimalPoint || isOnlyComma ? ',' : '.');
  return { decimal, thousands: thousandsMark(numbers, decimal) };
}

/** A cell without its unit, its exponent and blanks around it; a minus of typographers, or behind the number, is none here. */
function plainNumber(cell: string): string {
  const text = cell.trim();
  if (!/\d/.test(text.slice(0, 2))) return text;
  return text
    .replace(/^[−–](?=\d)/, '-')
    .replace(unitTail, '')
    .replace(/(?<=\d)(?:e[-+]?\d{1,3}|-)$/i, '');
}

const grouped = { ',': /^[-+]?[1-9]\d{0,2}(,\d{3})+$/, '.': /^[-+]?[1-9]\d{0,2}(\.\d{3})+$/ } as const;

function isGrouped(cell: string, mark: ',' | '.'): boolean {
  return grouped[mark].test(cell);
}

/** So many numbers of each kind in one column make a case (own choice). */
const leastOfKind = 3;

/**
 * "978", "1.002", "1.498" in one column are whole numbers with grouped thousands: of decimals some would have one digit
 * or two. Null where the mark parts decimals, or nothing tells.
 */
function groupedBy(mark: '.' | ',', rows: readonly string[][]): Pick<Dialect, 'decimal' | 'thousands'> | null {
  if (!rows.some((row) => row.some((cell) => cell.includes(mark)))) return null;
  const parting = mark === '.' ? /^\s*[-+]?\d*\.\d+\s*$/ : /^\s*[-+]?\d*,\d+\s*$/;
  if (rows.some((row) => row.some((cell) => parting.test(cell) && !isGrouped(cell.trim(), mark)))) return null;
  const isMixed = (_: unknown, column: number): boolean => {
    const own = rows.map((row) => row[column]!.trim());
    const whole = own.filter((cell) => /^[-+]?[1-9]\d{1,2}$/.test(cell)).length;
    return whole >= leastOfKind && own.filter((cell) => isGrouped(cell, mark)).length >= leastOfKind;
  };
  return rows[0]?.some(isMixed) ? { decimal: mark === '.' ? ',' : '.', thousands: mark } : null;
}

function thousandsMark(numbers: readonly string[], decimal: '.' | ','): Dialect['thousands'] {
  const other = decimal === ',' ? '.' : ',';
  const isGroupedBy = (mark: string): boolean => {
    const pattern = new RegExp(`^[-+]?\\d{1,3}(${mark}\\d{3})+(\\${decimal}\\d+)?$`);
    return numbers.some((cell) => pattern.test(cell));
  };
  if (isGroupedBy(`\\${other}`)) return other;
  if (isGroupedBy("'")) return "'";
  return isGroupedBy('[ \\u00a0\\u202f]') ? ' ' : '';
}

/**
 * A comma that parts cells AND decimals cannot be undone: "21,5,22,1" may be four numbers or two. It shows as rows
 * with about twice as many cells as the header has, unevenly, without a single decimal point and without quotes.
 */
function commaTrouble(rows: readonly string[][]): string | null {
  const header = widestWords(rows);
  if (header < 0) return null;
  const names = rows[header]!.length;
  const data = rows.slice(header + 1).filter((row) => row.length > 1);
  if (data.length < 3) return null;
  const wider = data.filter((row) => row.length > names);
  const hasPoint = data.some((row) => row.slice(1).some((cell) => /\d\.\d/.test(cell) && !/\d[:/-]\d/.test(cell)));
  if (wider.length < 0.8 * data.length || hasPoint) return null;
  return `The header names ${names} columns, but the rows have up to ${Math.max(...data.map((row) => row.length))} cells and no decimal point: the comma seems to part both cells and decimals, and no rule can tell which is which.`;
}

/** The row of names: of the rows that are mostly words the widest, for lines above the header may hold commas too. */
function widestWords(rows: readonly string[][]): number {
  let widest = -1;
  for (const [place, row] of rows.entries()) {
    const isWords = row.length > 1 && row.filter((cell) => /[A-Za-z]{2}/.test(cell)).length > row.length / 2;
    if (isWords && row.length > (rows[widest]?.length ?? 0)) widest = place;
  }
  return widest;
}
