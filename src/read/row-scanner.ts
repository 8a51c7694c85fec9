import { cellMark, type LogColumn, type LogFile } from '../model/log-file.js';
import { isBadQuality, readCell, readRunningWord } from './cell-value.js';
import { decodeBytes } from './encoding.js';
import type { RejectReason } from './row-tally.js';
import { TagTable } from './tag-table.js';
import { TimeBytes } from './time-bytes.js';
import { compileTime, joinDateAndClock } from './time-format.js';
import { parseClock } from './time-text.js';

/** What to do with a cell. */
const act = { skip: 0, number: 1, time: 2, date: 3, clock: 4, tag: 5, quality: 6, running: 7 } as const;

const lineFeed = 10;
const carriageReturn = 13;
const blank = 32;
const tab = 9;
const minus = 45;
const zero = 48;
/** Whole numbers of this many digits are exact in a double, and so is their quotient by a power of ten rounded right. */
const mostDigits = 15;
const powersOfTen = Array.from({ length: mostDigits + 1 }, (_, i) => 10 ** i);
/** Distinct texts remembered; a log with more holds free text in a number column. */
const mostTexts = 5000;

interface TextValue {
  readonly value: number;
  readonly mark: number;
  readonly running: number;
}

/**
 * Reads rows of one file into arrays, straight from bytes where it can (`scan`) and from cells where it must (`take`).
 * Both give the same numbers. One array per column that anybody reads; `at` is the place in it.
 */
export class RowScanner {
  /** Clock of the row just read. */
  clockMs = NaN;
  /** Number of its tag in a long file; -1 = not known, -2 = empty. */
  tag = -1;
  /** True when its quality cell says bad. */
  isBad = false;
  readonly values: readonly (Float64Array | null)[];
  readonly marks: readonly (Uint8Array | null)[];
  /** True when a mark other than 0 was written since it was last cleared. */
  hasMarks = false;

  /** Running state that the text of a value cell says; NaN = none. For tags of running machines. */
  runningOfText = NaN;

  private readonly actions: Uint8Array;
  private readonly above: Float64Array;
  private readonly tags = new TagTable();
  private readonly time: TimeBytes;
  private readonly readTimeCell: (cell: string) => number;
  private readonly texts = new Map<string, TextValue>();
  private readonly qualities = new Map<string, boolean>();
  private readonly separator: number;
  private readonly quote: number;
  private readonly decimal: number;
  private readonly isBlankApart: boolean;
  private readonly columnCount: number;
  private readonly hasRunningText: boolean;
  private lastUnknownTag = '';

  constructor(
    private readonly file: LogFile,
    capacity: number,
  ) {
    const { dialect, columns } = file;
    this.separator = dialect.separator.charCodeAt(0);
    this.quote = dialect.quote === '' ? -1 : dialect.quote.charCodeAt(0);
    this.decimal = dialect.decimal.charCodeAt(0);
    this.isBlankApart = dialect.separator === ' ';
    this.columnCount = columns.length === 0 ? 0 : Math.max(...columns.map((column) => column.index)) + 1;
    const width = Math.max(this.columnCount, file.header.length);
    this.columnCount = width;
    this.actions = new Uint8Array(width);
    this.above = new Float64Array(width);
    const values: (Float64Array | null)[] = new Array(width).fill(null);
    const marks: (Uint8Array | null)[] = new Array(width).fill(null);
    for (const column of columns) {
      this.actions[column.index] = actionOf(column);
      this.above[column.index] = column.above;
      if (!isKept(column)) continue;
      values[column.index] = new Float64Array(capacity);
      if (column.role === 'reading' || column.role === 'value') marks[column.index] = new Uint8Array(capacity);
    }
    for (const column of file.noValue?.columns ?? []) {
      if (values[column]) continue;
      this.actions[column] = act.number;
      values[column] = new Float64Array(capacity);
    }
    this.values = values;
    this.marks = marks;
    this.hasRunningText = file.tags.some((tag) => tag.role === 'running');
    this.time = new TimeBytes(file.time, file.encoding);
    this.readTimeCell = compileTime(file.time);
  }

  /** Makes a tag known; its number is the count of tags before it. */
  addTag(name: string): number {
    return this.tags.add(encodeText(name, this.file.encoding));
  }

  /** Forgets the marks of a row that is read again or left out. */
  clearRow(at: number): void {
    if (this.hasMarks) for (const marks of this.marks) if (marks) marks[at] = 0;
  }

  /** Forgets all marks, for the next batch. */
  clearMarks(): void {
    if (this.hasMarks) for (const marks of this.marks) marks?.fill(0);
    this.hasMarks = false;
  }

  /** Text of the tag that was last not known. */
  unknownTag(): string {
    return this.lastUnknownTag;
  }

  /**
   * Reads one row from bytes.
   *
   * @param start First byte of the row. A line feed must follow somewhere.
   * @param at Place in the arrays.
   * @returns First byte of the next row; -1 when the row is out of the ordinary and must go through `take`.
   */
  scan(bytes: Buffer, start: number, at: number): number {
    const { actions, values, separator, decimal, isBlankApart, columnCount } = this;
    this.isBad = false;
    this.tag = -1;
    this.runningOfText = NaN;
    let p = start;
    let dateStart = -1;
    let dateEnd = -1;
    let clockStart = -1;
    let clockEnd = -1;
    if (isBlankApart) p = skipBlanks(bytes, p);
    for (let c = 0; ; c++) {
      const action = c < columnCount ? actions[c]! : act.skip;
      let b = bytes[p]!;
      let q = p;
      let isDone = false;
      if (action === act.number || action === act.running) {
        // The hot path: sign, digits, decimal mark, digits.
        let isNegative = false;
        if (b === minus) {
          isNegative = true;
          b = bytes[++q]!;
        }
        const first = q;
        let whole = 0;
        while (b >= zero && b <= 57) {
          whole = whole * 10 + (b - zero);
          b = bytes[++q]!;
        }
        let digits = q - first;
        let value = whole;
        if (b === decimal) {
          const point = q;
          b = bytes[++q]!;
          while (b >= zero && b <= 57) {
            whole = whole * 10 + (b - zero);
            b = bytes[++q]!;
          }
          const decimals = q - point - 1;
          digits += decimals;
          if (digits <= mostDigits) value = whole / powersOfTen[decimals]!;
        }
        if (
          digits > 0 &&
          digits <= mostDigits &&
          (b === separator || b === lineFeed || b === carriageReturn || (isBlankApart && b === tab))
        ) {
          if (isNegative) value = -value;
          values[c]![at] = action === act.number ? value : value > this.above[c]! ? 1 : 0;
          isDone = true;
        } else q = p;
      }
      if (!isDone) {
        q = this.cellEnd(bytes, p);
        if (q < 0) return -1;
        if (action !== act.skip) {
          const isQuoted = bytes[p] === this.quote;
          const from = isQuoted ? p + 1 : p;
          const to = isQuoted ? q - 1 : q;
          if (action === act.time || action === act.date) {
            dateStart = from;
            dateEnd = to;
          } else if (action === act.clock) {
            clockStart = from;
            clockEnd = to;
          } else this.oddCell(action, c, at, bytes, from, to);
        }
        b = bytes[q]!;
      }
      if (isBlankApart && (b === blank || b === tab)) {
        p = skipBlanks(bytes, q);
        b = bytes[p]!;
        if (b !== lineFeed && b !== carriageReturn) continue;
        q = p;
      } else if (b === separator) {
        p = q + 1;
        continue;
      }
      if (b === carriageReturn && bytes[++q] !== lineFeed) return -1;
      if (c + 1 < this.file.rowWidth || c + 1 > columnCount) return -1;
      for (let rest = c + 1; rest < columnCount; rest++) this.missingCell(rest, at);
      this.clockMs = this.readTime(bytes, dateStart, dateEnd, clockStart, clockEnd);
      return Number.isNaN(this.clockMs) ? -1 : q + 1;
    }
  }

  /** Behind the cell that begins at `start`; -1 for a quoted cell that is not plain. A quoted cell ends behind its quote. */
  private cellEnd(bytes: Buffer, start: number): number {
    const { separator, quote, isBlankApart } = this;
    let q = start;
    const isQuoted = bytes[q] === quote;
    if (isQuoted) {
      for (q++; bytes[q] !== quote; q++) if (bytes[q] === lineFeed || bytes[q] === 0) return -1;
      q++;
      const b = bytes[q]!;
      const isEnd = b === separator || b === lineFeed || b === carriageReturn || (isBlankApart && b === tab);
      return isEnd ? q : -1;
    }
    for (;;) {
      const b = bytes[q]!;
      if (b === separator || b === lineFeed || (isBlankApart && b === tab)) return q;
      if (b === carriageReturn && bytes[q + 1] === lineFeed) return q;
      if (b === quote || b === 0 || b === carriageReturn) return -1;
      q++;
    }
  }

  private readTime(bytes: Buffer, dateStart: number, dateEnd: number, clockStart: number, clockEnd: number): number {
    if (dateStart < 0) return NaN;
    if (clockStart < 0) return this.time.read(bytes, dateStart, dateEnd);
    if (clockStart === dateEnd + 1 && bytes[dateEnd] === blank) return this.time.read(bytes, dateStart, clockEnd);
    const joined = joinDateAndClock(
      decodeBytes(bytes.subarray(dateStart, dateEnd), this.file.encoding),
      decodeBytes(bytes.subarray(clockStart, clockEnd), this.file.encoding),
    );
    return this.readJoined(joined);
  }

  private lastDate = '';
  private lastDateMs = NaN;

  /** Date and clock stand apart: the date is remembered. */
  private readJoined(joined: string): number {
    const cut = joined.lastIndexOf(' ');
    const date = joined.slice(0, cut);
    const clock = parseClock(joined.slice(cut + 1));
    if (!clock || cut < 0 || / [ap]\.?m\.?$/i.test(joined)) return this.readTimeCell(joined);
    if (date !== this.lastDate) {
      this.lastDate = date;
      this.lastDateMs = this.readTimeCell(date);
    }
    return this.lastDateMs + clock.ms;
  }

  private oddCell(action: number, c: number, at: number, bytes: Buffer, from: number, to: number): void {
    if (action === act.tag) return this.findTag(bytes, from, to);
    const key = bytes.toString('latin1', from, to);
    const decode = (): string => decodeBytes(bytes.subarray(from, to), this.file.encoding);
    if (action === act.quality) this.isBad = this.qualities.get(key) ?? this.readQuality(decode(), key);
    else this.putText(action, c, at, this.texts.get(key) ?? this.readText(decode(), key));
  }

  private findTag(bytes: Buffer, from: number, to: number): void {
    let start = from;
    let end = to;
    while (start < end && bytes[start] === blank) start++;
    while (end > start && bytes[end - 1] === blank) end--;
    this.tag = start === end ? -2 : this.tags.find(bytes, start, end);
    if (this.tag === -1) this.lastUnknownTag = decodeBytes(bytes.subarray(start, end), this.file.encoding).trim();
  }

  /** A short row lacks its last cells: they count as empty. */
  private missingCell(c: number, at: number): void {
    const action = this.actions[c]!;
    if (action === act.number || action === act.running) this.putText(action, c, at, this.textValue(''));
  }

  private readQuality(text: string, key: string): boolean {
    const isBad = isBadQuality(text, this.file.isZeroGood);
    if (this.qualities.size < mostTexts) this.qualities.set(key, isBad);
    return isBad;
  }

  private readText(text: string, key: string): TextValue {
    const value = this.textValue(text);
    if (this.texts.size < mostTexts) this.texts.set(key, value);
    return value;
  }

  private textValue(text: string): TextValue {
    const { value, mark } = readCell(text, this.file.dialect);
    return { value, mark, running: mark === cellMark.number ? NaN : readRunningWord(text) };
  }

  private putText(action: number, c: number, at: number, { value, mark, running }: TextValue): void {
    if (action === act.running) {
      this.values[c]![at] = mark === cellMark.number ? (value > this.above[c]! ? 1 : 0) : running;
      return;
    }
    this.values[c]![at] = value;
    if (this.hasRunningText) this.runningOfText = running;
    const marks = this.marks[c];
    if (!marks || mark === cellMark.number) return;
    marks[at] = mark;
    this.hasMarks = true;
  }

  /**
   * Reads one row from its cells.
   *
   * @returns null, or why the row is left out.
   */
  take(cells: readonly string[], at: number): RejectReason | null {
    if (cells.every((cell) => cell.trim() === '')) return 'blank-row';
    if (this.isHeader(cells)) return 'repeated-header';
    if (cells.length < this.file.rowWidth) return 'short-row';
    if (cells.slice(this.columnCount).some((cell) => cell.trim() !== '')) return 'long-row';
    this.isBad = false;
    this.tag = -1;
    this.runningOfText = NaN;
    let date = '';
    let clock: string | null = null;
    for (let c = 0; c < this.columnCount; c++) {
      const action = this.actions[c]!;
      const cell = cells[c] ?? '';
      if (action === act.time || action === act.date) date = cell;
      else if (action === act.clock) clock = cell;
      else if (action === act.tag) this.takeTag(cell);
      else if (action === act.quality) this.isBad = isBadQuality(cell, this.file.isZeroGood);
      else if (action !== act.skip) this.putText(action, c, at, this.textValue(cell));
    }
    this.clockMs = this.readTimeCell(clock === null ? date : joinDateAndClock(date, clock));
    return Number.isNaN(this.clockMs) ? 'bad-time' : null;
  }

  private takeTag(cell: string): void {
    const bytes = encodeText(cell.trim(), this.file.encoding);
    this.tag = bytes.length === 0 ? -2 : this.tags.find(bytes, 0, bytes.length);
    if (this.tag === -1) this.lastUnknownTag = cell.trim();
  }

  private isHeader(cells: readonly string[]): boolean {
    const { header } = this.file;
    return cells.length > 1 && cells[0]!.trim() === header[0] && cells[1]!.trim() === header[1];
  }
}

function actionOf({ role }: LogColumn): number {
  switch (role) {
    case 'time':
      return act.time;
    case 'date':
      return act.date;
    case 'clock':
      return act.clock;
    case 'tag':
      return act.tag;
    case 'quality':
      return act.quality;
    case 'running':
      return act.running;
    case 'ignored':
      return act.skip;
    default:
      return act.number;
  }
}

function isKept({ role }: LogColumn): boolean {
  return role === 'reading' || role === 'setpoint' || role === 'output' || role === 'running' || role === 'value';
}

function skipBlanks(bytes: Buffer, start: number): number {
  let p = start;
  while (bytes[p] === blank || bytes[p] === tab) p++;
  return p;
}

/** Bytes of a text as they stand in a file of that encoding, for the characters that names are made of. */
function encodeText(text: string, encoding: LogFile['encoding']): Buffer {
  return encoding === 'windows-1252' ? Buffer.from(text, 'latin1') : Buffer.from(text, 'utf8');
}
