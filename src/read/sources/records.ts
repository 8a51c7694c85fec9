import { parse } from 'csv-parse/sync';
import type { Dialect } from '../../model/log-file.js';
import { decodeBytes, decodeLine, type Encoding } from './encoding.js';
import { LineWindow, openText, type LongLine, type TextRef } from './text-source.js';

/** One row of a text as cells; a quoted cell may hold line ends. */
export interface TextRecord {
  /** Line on which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
  /** False for the last row of a file that does not end with a line end. */
  readonly isEnded: boolean;
}

export type RowReason = 'long-line' | 'open-quote' | 'nul-bytes' | 'bad-quotes' | 'bad-json';

/** Is told which rows could not be cut into cells. */
export type OnBadRow = (line: number, reason: RowReason, text: string) => void;

/** A quoted cell longer than this was never closed. */
export const longestQuoted = 64 * 1024;

/**
 * Rows of a text, read with csv-parse, in bounded memory. Rows that cannot be read are told to `onBadRow` and left out;
 * blank lines are skipped. Throws LogProblem when the file cannot be read further.
 */
export async function* readRecords(
  ref: TextRef,
  encoding: Encoding,
  dialect: Dialect,
  onBadRow: OnBadRow = () => undefined,
): AsyncGenerator<TextRecord> {
  const window = new LineWindow(await openText(ref, encoding), (line) =>
    onBadRow(line.number, 'long-line', longLineText(line, encoding)),
  );
  const lines = new TextLines(window, encoding);
  try {
    for (let line = await lines.next(); line; line = await lines.next()) {
      const record = await readRecord(lines, line, dialect, onBadRow);
      if (record) yield record;
    }
  } finally {
    await window.close();
  }
}

interface TextLine {
  readonly text: string;
  readonly number: number;
  readonly isEnded: boolean;
  readonly hasReturn: boolean;
}

/** Lines one after the other; some may be put back. */
class TextLines {
  private readonly waiting: TextLine[] = [];

  constructor(
    private readonly window: LineWindow,
    private readonly encoding: Encoding,
  ) {}

  async next(): Promise<TextLine | null> {
    const waiting = this.waiting.pop();
    if (waiting) return waiting;
    const place = this.window.next() ?? ((await this.window.more()) ? this.window.next() : null);
    if (!place) return null;
    const { start, end, number, isEnded, hasReturn } = place;
    return { text: decodeLine(this.window.buffer.subarray(start, end), this.encoding), number, isEnded, hasReturn };
  }

  putBack(lines: readonly TextLine[]): void {
    this.waiting.push(...lines.toReversed());
  }
}

/** How a line is shown that is too long for a row: its beginning and its length. */
export function longLineText({ bytes, start }: LongLine, encoding: Encoding): string {
  return `${decodeBytes(start, encoding).trim()}… ${(bytes / 1e6).toFixed(1)} million characters in all`;
}

async function readRecord(
  lines: TextLines,
  first: TextLine,
  dialect: Dialect,
  onBadRow: OnBadRow,
): Promise<TextRecord | null> {
  const behind: TextLine[] = [];
  let { text, isEnded, hasReturn } = first;
  for (let isOpen = isQuoteOpen(text, dialect); isOpen;) {
    const next = text.length > longestQuoted ? null : await lines.next();
    if (next) behind.push(next);
    if (next === null || isNextRow(first.text, next.text, dialect)) {
      // All of it was looked at only to find the other quote.
      lines.putBack(behind);
      onBadRow(first.number, 'open-quote', first.text);
      return null;
    }
    isOpen = isQuoteOpen(next.text, dialect, true);
    text += `${hasReturn ? '\r\n' : '\n'}${next.text}`;
    ({ isEnded, hasReturn } = next);
  }
  const cells = parseRow(text, dialect);
  if (typeof cells === 'string') onBadRow(first.number, cells, text);
  return typeof cells === 'string' || cells === null ? null : { line: first.number, cells, isEnded };
}

/** A line that begins with a time as the row does, and holds as many cells, is the row behind it, and no part of its cell. */
export function isNextRow(row: string, text: string, { separator }: Dialect): boolean {
  const [begin = '', ...rest] = row.split(separator);
  const [other = '', ...otherRest] = text.split(separator);
  const shape = begin.replace(/\d/g, '0');
  return (
    shape.length > 4 && shape.includes('0') && other.replace(/\d/g, '0') === shape && rest.length === otherRest.length
  );
}

/**
 * True when the text ends inside a quoted cell: a cell begins with a quote that nothing closes.
 *
 * @param isOpenBefore Whether the text begins inside one.
 */
export function isQuoteOpen(text: string, { separator, quote }: Dialect, isOpenBefore = false): boolean {
  if (!quote || !text.includes(quote)) return isOpenBefore;
  let isOpen = isOpenBefore;
  let isCellStart = !isOpen;
  for (let i = 0; i < text.length; i++) {
    const char = text[i]!;
    if (isOpen) {
      if (char === quote) {
        if (text[i + 1] === quote) i++;
        else isOpen = false;
      }
    } else if (char === quote && isCellStart) isOpen = true;
    isCellStart = !isOpen && (char === separator || char === '\n');
  }
  return isOpen;
}

/**
 * Cells of one row by csv-parse: quotes, doubled quotes, line ends inside quotes.
 *
 * @returns The cells, null for a blank row, or why it cannot be read. Never throws.
 */
export function parseRow(row: string, dialect: Dialect): string[] | null | RowReason {
  const text = withoutFormulas(row, dialect);
  if (text.trim() === '') return null;
  if (text.includes('\0')) return 'nul-bytes';
  if (dialect.separator === ' ') return parseBlanks(text, dialect);
  if (!dialect.quote || !text.includes(dialect.quote)) return text.split(dialect.separator); // the same, far quicker
  try {
    const rows: string[][] = parse(text, {
      delimiter: dialect.separator,
      quote: dialect.quote || null,
      escape: dialect.quote || null,
      record_delimiter: '\0', // line ends inside the text belong to a quoted cell
      relax_quotes: true,
      relax_column_count: true,
    });
    return rows[0] ?? null;
  } catch {
    return 'bad-quotes';
  }
}

/** ="2026-03-02" is how a text is written that a spreadsheet shall not change: the same in quotes (common practice). */
export function withoutFormulas(text: string, { separator, quote }: Pick<Dialect, 'separator' | 'quote'>): string {
  if (quote !== '"' || !text.includes('="')) return text;
  const parts = text.split('="');
  return parts.reduce((joined, part) => (isCellStart(joined, separator) ? `${joined}"${part}` : `${joined}="${part}`));
}

function isCellStart(before: string, separator: string): boolean {
  return before === '' || before.endsWith(separator);
}

/** Runs of blanks part cells, wherever they stand. */
function parseBlanks(text: string, dialect: Dialect): string[] {
  const trimmed = text.trim();
  if (!dialect.quote || !trimmed.includes(dialect.quote)) return trimmed.split(/[ \t]+/);
  return splitQuotedBlanks(trimmed, dialect.quote);
}

function splitQuotedBlanks(text: string, quote: string): string[] {
  const cell = new RegExp(`${quote}((?:[^${quote}]|${quote}${quote})*)${quote}|[^ \\t]+`, 'g');
  return [...text.matchAll(cell)].map((match) =>
    match[1] === undefined ? match[0] : match[1].replaceAll(quote + quote, quote),
  );
}
