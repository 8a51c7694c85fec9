import type { Dialect, LogFile } from '../../model/log-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import { decodeBytes } from '../sources/encoding.js';
import { isNextRow, isQuoteOpen, longestQuoted, longLineText, parseRow } from '../sources/records.js';
import type { LongRun } from './long-run.js';
import type { RowScanner } from './row-scanner.js';
import type { RejectReason, RowTally } from './row-tally.js';
import { isTable, readTableParts } from '../sources/read-table.js';
import type { TableCell, TablePart } from '../sources/table-part.js';
import { LineWindow, openText } from '../sources/text-source.js';
import { ClockDays } from '../times/clock-days.js';
import { TimeGate } from '../times/time-gate.js';

export interface FeedOptions {
  /** False = every row goes through csv-parse, every cell as a text; for tests that compare both ways. */
  readonly isFast?: boolean;
  /** Called now and then with the bytes read so far. */
  readonly onProgress?: ((bytes: number) => void) | undefined;
}

/** Where the rows of a file go. */
export interface RowTaker<Batch> {
  /** Handed out when it is full, and used again. */
  readonly batch: Batch;
  /** Takes one row that was read into the scanner's arrays; returns the place for the next row. */
  readonly takeRow: (line: number, at: number) => number;
  readonly isFull: (at: number) => boolean;
  /** Takes many plain rows at once; absent where the file has none. */
  readonly run?: LongRun;
}

/**
 * Feeds the rows of a file to a taker. Rows left out are counted in the tally; a file that breaks off becomes a problem
 * and what was read before it stays.
 */
export async function* feedRows<Batch>(
  taker: RowTaker<Batch>,
  file: LogFile,
  scanner: RowScanner,
  tally: RowTally,
  problems: ProblemNote[],
  options: FeedOptions = {},
): AsyncGenerator<Batch> {
  const feed = new RowFeed(taker, file, scanner, tally, options.isFast ?? true);
  try {
    if (isTable(file))
      yield* feed.feedTable(readTableParts(file, (line, reason, text) => tally.reject(line, reason, text)));
    else yield* feed.feedText(options.onProgress ?? (() => undefined));
  } catch (error) {
    if (!(error instanceof LogProblem)) throw error;
    problems.push(error.toNote());
  }
  yield* feed.feedHeld();
}

/** A row that waits until the rows behind it tell whether its time can be right. */
interface HeldRow {
  readonly cells: readonly string[];
  readonly line: number;
}

class RowFeed<Batch> {
  private at = 0;
  private readonly gate: TimeGate<HeldRow>;
  /** null unless the rows hold times of day only. */
  private readonly days: ClockDays | null;
  /** Rows that waited and are to be taken before any other, from `readyAt` on. */
  private ready: HeldRow[] = [];
  private readyAt = 0;
  /** Absent where every row is looked at by itself. */
  private readonly run: LongRun | undefined;
  private readonly passes = (ms: number): boolean => this.gate.passes(ms);

  constructor(
    private readonly taker: RowTaker<Batch>,
    private readonly file: LogFile,
    private readonly scanner: RowScanner,
    private readonly tally: RowTally,
    private readonly isFast: boolean,
  ) {
    const setAside = ({ cells, line }: HeldRow, reason: RejectReason): void =>
      tally.reject(line, reason, cells.join(file.dialect.separator));
    this.gate = new TimeGate(file, setAside);
    this.days = file.days ? new ClockDays(file.days) : null;
    this.run = isFast && !file.days ? taker.run : undefined;
  }

  async *feedTable(table: AsyncIterable<TablePart>): AsyncGenerator<Batch> {
    for await (const { count, lineOf, cellsOf } of table)
      for (let i = 0; i < count; i++) {
        const line = lineOf(i);
        if (line < this.file.firstDataLine) continue;
        const cells = this.isFast ? cellsOf(i) : cellsOf(i).map(String);
        this.takeCells(cells, line, true, () => cells.join(' '));
        while (!this.takeReady()) yield* this.handOver();
      }
  }

  /** The end of the file: what still waits is decided on. */
  *feedHeld(): Generator<Batch> {
    this.ready.push(...this.gate.end());
    while (!this.takeReady()) yield* this.handOver();
  }

  async *feedText(onProgress: (bytes: number) => void): AsyncGenerator<Batch> {
    const source = await openText(this.file, this.file.encoding);
    const window = new LineWindow(source, (line) =>
      this.tally.reject(line.number, 'long-line', longLineText(line, this.file.encoding)),
    );
    let bytes = 0;
    try {
      while (await window.more()) {
        const before = window.start;
        while (!this.consume(window)) yield* this.handOver();
        bytes += window.start - before;
        onProgress(bytes);
      }
    } finally {
      await window.close();
    }
  }

  /** The consumer takes the batch while the generator stands here; then the arrays are used again. */
  private *handOver(): Generator<Batch> {
    yield this.taker.batch;
    this.at = 0;
    this.scanner.store.clearMarks();
  }

  /** Reads rows of the window; false when a batch is full, true when the window needs more bytes. */
  private consume(window: LineWindow): boolean {
    const { scanner, file } = this;
    while (window.start < window.end) {
      if (!this.takeReady()) return false;
      if (window.line < file.firstDataLine) {
        window.next();
        continue;
      }
      if (this.takeRun(window)) continue;
      // The last line may have no line end, which the byte scanner needs.
      const next = this.isFast && !window.isFinal ? scanner.scan(window.buffer, window.start, this.at) : -1;
      if (next >= 0) {
        const { start } = window;
        const line = window.line++;
        window.start = next;
        if (this.days) this.addDay(line);
        if (this.gate.passes(scanner.clockMs)) this.finishRow(line);
        else this.holdBack(this.cellsOf(window.buffer.subarray(start, next)), line);
      } else if (!this.consumeSlowly(window)) return true;
    }
    return this.takeReady();
  }

  /** Takes the plain rows that stand next in the window, as far as the batch has room; false when there is none. */
  private takeRun(window: LineWindow): boolean {
    if (!this.run || window.isFinal) return false;
    window.start = this.run.take(window.buffer, window.start, window.end, window.line, this.passes);
    window.line += this.run.rowCount;
    this.tally.rowsRead += this.run.rowCount;
    return this.run.rowCount > 0;
  }

  private cellsOf(row: Buffer): readonly string[] {
    const cells = parseRow(decodeBytes(row, this.file.encoding).replace(/\r?\n$/, ''), this.file.dialect);
    return Array.isArray(cells) ? cells : [];
  }

  private holdBack(cells: readonly string[], line: number): void {
    this.scanner.store.clearRow(this.at);
    this.ready.push(...this.gate.take({ cells, line }, this.scanner.clockMs));
  }

  /** Takes rows that waited; false when the batch is full. */
  private takeReady(): boolean {
    while (this.readyAt < this.ready.length && !this.taker.isFull(this.at)) {
      const { cells, line } = this.ready[this.readyAt++]!;
      this.scanner.take(cells, this.at);
      if (this.days) this.addDay(line);
      this.finishRow(line);
    }
    if (this.ready.length > 0 && this.readyAt === this.ready.length) [this.ready, this.readyAt] = [[], 0];
    return !this.taker.isFull(this.at);
  }

  private addDay(line: number): void {
    this.scanner.clockMs += this.days!.dayMs(line);
  }

  private finishRow(line: number): void {
    this.tally.rowsRead++;
    this.at = this.taker.takeRow(line, this.at);
  }

  /** One row through csv-parse; false when its quoted cell goes on behind the window. */
  private consumeSlowly(window: LineWindow): boolean {
    const { dialect, encoding } = this.file;
    this.scanner.store.clearRow(this.at);
    const start = { start: window.start, line: window.line };
    const textOf = (from: number, to: number): string => decodeBytes(window.buffer.subarray(from, to), encoding);
    const first = window.next()!;
    const firstText = textOf(first.start, first.end);
    let last = first;
    for (let isOpen = isQuoteOpen(firstText, dialect); isOpen;) {
      const isTooLong = last.end - first.start > longestQuoted;
      const next = isTooLong ? null : window.next();
      const nextText = next && textOf(next.start, next.end);
      if (nextText !== null && !isNextRow(firstText, nextText, dialect)) {
        isOpen = isQuoteOpen(nextText, dialect, true);
        last = next!;
        continue;
      }
      window.start = start.start;
      window.line = start.line;
      if (!next && !isTooLong && !window.isFinal) return false;
      this.skipOpenQuote(window, dialect);
      return true;
    }
    const { isEnded } = last;
    const text = last === first ? firstText : textOf(first.start, last.end);
    const cells = parseRow(text, dialect);
    if (typeof cells === 'string') this.tally.reject(start.line, cells, text);
    else if (cells) this.takeCells(cells, start.line, isEnded, () => text);
    return true;
  }

  /** A quote that nothing closes: its line is left out and reading goes on behind it. */
  private skipOpenQuote(window: LineWindow, dialect: Dialect): void {
    const line = window.next()!;
    const text = decodeBytes(window.buffer.subarray(line.start, line.end), this.file.encoding);
    const isHalf = !line.isEnded && dialect.quote !== '';
    this.tally.reject(line.number, isHalf ? 'half-line' : 'open-quote', text);
  }

  private takeCells(cells: readonly TableCell[], line: number, isEnded: boolean, text: () => string): void {
    const reason = this.scanner.take(cells, this.at);
    if (this.days) this.addDay(line);
    if (reason === null)
      return this.gate.passes(this.scanner.clockMs) ? this.finishRow(line) : this.holdBack(cells.map(String), line);
    this.scanner.store.clearRow(this.at);
    if (this.days?.isDateLine(line)) return;
    this.tally.reject(line, isEnded ? (isComment(cells) ? 'comment' : reason) : 'half-line', text());
  }
}

/** A row that cannot be read and begins as comments do; "####" is an open input. */
function isComment(cells: readonly TableCell[]): boolean {
  return /^\s*(#(?!#)|\/\/)/.test(String(cells[0] ?? ''));
}
