import type { LogFile } from '../../model/log-file.js';
import { CellBounds } from './cell-bounds.js';
import { decodeBytes } from '../sources/encoding.js';
import { putNumber } from './number-bytes.js';
import { isTextRow, whyNoRow } from './left-out-row.js';
import { canRun, type RunParts } from './long-run.js';
import { OddCells } from './odd-cells.js';
import { QualityCells } from './quality-cells.js';
import { act, planRow, type RowPlan } from './row-plan.js';
import { RowStore } from './row-store.js';
import { joinedTagOf, partsOfTag, rowTag, type TagPlace } from './row-tag.js';
import type { RejectReason } from './row-tally.js';
import { TagTable } from './tag-table.js';
import type { TableCell } from '../sources/table-part.js';
import { TenthsBytes } from './tenths-bytes.js';
import { timeCell } from '../times/time-cell.js';
import { TimeBytes } from '../times/time-bytes.js';
import { compileTime, joinDateAndClock } from '../times/time-format.js';
import { JoinedTime } from '../times/joined-time.js';

const lineFeed = 10;
const carriageReturn = 13;
const blank = 32;

/**
 * Reads rows of one file into arrays, straight from bytes where it can (`scan`) and from cells where it must (`take`).
 * Both give the same numbers. One array per column that anybody reads; `at` is the place in it.
 */
export class RowScanner {
  /** Clock of the row just read. */
  clockMs = NaN;
  /** Number of its tag in a long file; -1 = not known, -2 = empty. */
  tag = -1;
  /** What its quality cells say. */
  readonly quality: QualityCells;
  readonly store: RowStore;

  private readonly plan: RowPlan;
  private readonly bounds: CellBounds;
  private readonly odd: OddCells;
  private readonly tags: TagTable;
  private readonly tenths: TenthsBytes;
  private readonly time: TimeBytes;
  private readonly readTimeCell: (cell: string) => number;
  private readonly joined: JoinedTime;
  private readonly decimal: number;
  private readonly joinedTag: TagPlace | null;
  private readonly isJoined: boolean;
  private lastUnknownTag = '';
  /** Date and clock of a row of cells. */
  private takenDate = '';
  private takenClock: string | null = null;
  /** Date and clock cells of the row, where they stand apart; -1 = not met. */
  private dateStart = -1;
  private dateEnd = -1;
  private clockStart = -1;
  private clockEnd = -1;

  constructor(
    private readonly file: LogFile,
    capacity: number,
  ) {
    this.plan = planRow(file, capacity);
    const hasStateText = file.tags.some(({ role }) => role === 'running' || role === 'alarm');
    this.store = new RowStore(this.plan, hasStateText);
    this.bounds = new CellBounds(file.dialect);
    this.odd = new OddCells(file);
    this.quality = new QualityCells(file);
    this.tags = new TagTable(this.bounds);
    this.tenths = new TenthsBytes(file.dialect, this.plan);
    this.decimal = file.dialect.decimal.charCodeAt(0);
    this.joinedTag = joinedTagOf(file);
    this.isJoined = file.timePlace !== undefined || this.joinedTag !== null;
    this.time = new TimeBytes(file.time, file.encoding);
    this.readTimeCell = compileTime(file.time);
    this.joined = new JoinedTime(this.readTimeCell);
  }

  /** Makes a tag known; its number is the count of tags before it. */
  addTag(name: string): number {
    return this.tags.add(encodeText(name, this.file.encoding));
  }

  /** What reads many rows at a time where they allow it; null where they do not. */
  runParts(): RunParts | null {
    const { plan, bounds, odd, time, tags } = this;
    const parts = { plan, bounds, odd, time, tags };
    return !this.isJoined && canRun(this.file, parts) ? parts : null;
  }

  /** Text of the tag that was last not known. */
  unknownTag(): string {
    return this.lastUnknownTag;
  }

  /**
   * Reads one row from bytes. Plain numbers, and times and tags that follow from the row before, are read as they are
   * met; the bounds of any other cell are found first.
   *
   * @param start First byte of the row. A line feed must follow somewhere.
   * @param at Place in the arrays.
   * @returns First byte of the next row; -1 when the row is out of the ordinary and must go through `take`.
   */
  scan(bytes: Buffer, start: number, at: number): number {
    if (this.isJoined) return -1; // a time or a tag in several cells is put together as text
    const { decimal, tenths } = this;
    const { actions, numbers, firstPlace, columnCount } = this.plan;
    const { separator, isBlankApart } = this.bounds;
    this.startRow();
    tenths.lookAt(bytes);
    let p = isBlankApart ? this.bounds.skipBlanks(bytes, start) : start;
    for (let c = 0; c < columnCount; c++) {
      if (actions[c] === act.number) {
        c = tenths.putRun(p, c, at);
        p = tenths.behind;
      }
      const action = actions[c]!;
      let q =
        action === act.number
          ? putNumber(bytes, p, decimal, numbers, firstPlace[c]! + at)
          : this.skim(action, bytes, p);
      if (q >= 0 && bytes[q] === separator && !isBlankApart) {
        p = q + 1;
        continue;
      }
      if (q < 0 || !this.bounds.isEnd(bytes[q]!)) q = this.readCell(action, c, at, bytes, p);
      if (q < 0) return -1;
      if (isBlankApart) q = this.bounds.skipBlanks(bytes, q);
      if (bytes[q] === lineFeed || bytes[q] === carriageReturn) return this.endRow(bytes, q, c + 1, at);
      p = isBlankApart ? q : q + 1;
    }
    return -1; // more cells than columns
  }

  private startRow(): void {
    this.quality.startRow();
    this.store.startRow();
    this.tag = -1;
    this.clockMs = NaN;
    this.dateStart = -1;
    this.clockStart = -1;
  }

  /** Behind the cell when it is the time or the tag that was to be expected, else -1. */
  private skim(action: number, bytes: Buffer, start: number): number {
    if (action === act.time && !this.plan.hasClock) {
      const end = this.time.skim(bytes, start);
      this.clockMs = this.time.ms;
      return end;
    }
    if (action !== act.tag) return -1;
    const end = this.tags.skim(bytes, start);
    this.tag = this.tags.number;
    return end;
  }

  /** Reads any cell; returns what stands behind it, -1 when the row must go through `take`. */
  private readCell(action: number, c: number, at: number, bytes: Buffer, start: number): number {
    const end = this.bounds.endOf(bytes, start);
    if (end < 0 || action === act.skip) return end;
    const isQuoted = bytes[start] === this.bounds.quote;
    const from = isQuoted ? start + 1 : start;
    const to = isQuoted ? end - 1 : end;
    if (action === act.tag) this.findTag(bytes, from, to);
    else if (action === act.quality) this.quality.meet(c, this.odd.isBad(bytes, from, to));
    else if (action === act.clock) [this.clockStart, this.clockEnd] = [from, to];
    else if (action === act.time || action === act.date) this.meetDate(bytes, from, to);
    else this.readValue(c, at, bytes, from, to);
    return end;
  }

  private meetDate(bytes: Buffer, from: number, to: number): void {
    if (this.plan.hasClock) [this.dateStart, this.dateEnd] = [from, to];
    else this.clockMs = this.time.read(bytes, from, to);
  }

  /** A number in quotes or between blanks, or a text. */
  private readValue(c: number, at: number, bytes: Buffer, from: number, to: number): void {
    const { actions, numbers, firstPlace } = this.plan;
    const place = firstPlace[c]! + at;
    let [first, end] = [from, to];
    while (first < end && bytes[first] === blank) first++;
    while (end > first && bytes[end - 1] === blank) end--;
    if (putNumber(bytes, first, this.decimal, numbers, place) !== end)
      this.store.putText(c, at, this.odd.valueOf(bytes, from, to));
    else if (actions[c] !== act.number) this.store.putNumber(c, at, numbers[place]!);
  }

  /** The line ends at `end` behind so many cells. */
  private endRow(bytes: Buffer, end: number, cellCount: number, at: number): number {
    const isReturn = bytes[end] === carriageReturn;
    if (isReturn && bytes[end + 1] !== lineFeed) return -1;
    if (cellCount < this.file.rowWidth || this.store.hasText) return -1;
    for (let c = cellCount; c < this.plan.columnCount; c++) this.missingCell(c, at);
    if (this.plan.hasClock) this.clockMs = this.readDateAndClock(bytes);
    if (Number.isNaN(this.clockMs)) return -1;
    return isReturn ? end + 2 : end + 1;
  }

  private readDateAndClock(bytes: Buffer): number {
    const { dateStart, dateEnd, clockStart, clockEnd } = this;
    if (dateStart < 0) return NaN;
    if (clockStart < 0) return this.time.read(bytes, dateStart, dateEnd);
    if (clockStart === dateEnd + 1 && bytes[dateEnd] === blank) return this.time.read(bytes, dateStart, clockEnd);
    const joined = joinDateAndClock(
      decodeBytes(bytes.subarray(dateStart, dateEnd), this.file.encoding),
      decodeBytes(bytes.subarray(clockStart, clockEnd), this.file.encoding),
    );
    return this.joined.read(joined);
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
    if (isOfValues(this.plan.actions[c]!)) this.store.putText(c, at, this.odd.valueOfText(''));
  }

  /**
   * Reads one row from its cells.
   *
   * @returns null, or why the row is left out.
   */
  take(cells: readonly TableCell[], at: number): RejectReason | null {
    const { columnCount } = this.plan;
    const reason = whyNoRow(cells, this.file, columnCount);
    if (reason) return reason;
    this.startRow();
    this.takenDate = '';
    this.takenClock = null;
    for (let c = 0; c < columnCount; c++) {
      const cell = cells[c] ?? '';
      if (this.joinedTag?.tagColumn === c) this.takeTag(rowTag(cells, this.joinedTag));
      else if (typeof cell === 'number') this.takeNumber(c, at, cell);
      else this.takeText(c, at, cell);
    }
    const { timePlace } = this.file;
    const { takenDate: date, takenClock: clock } = this;
    const joined = clock === null ? date : joinDateAndClock(date, clock);
    this.clockMs = this.readTimeCell(timePlace ? timeCell(cells.map(String), timePlace) : joined);
    if (Number.isNaN(this.clockMs)) return 'bad-time';
    return isTextRow(cells, this.plan, this.odd) ? 'text-row' : null;
  }

  /** Puts a number of a workbook where its text would put it; −0 is written 0. */
  private takeNumber(c: number, at: number, cell: number): void {
    if (isOfValues(this.plan.actions[c]!)) this.store.putNumber(c, at, cell + 0);
    else this.takeText(c, at, String(cell));
  }

  private takeText(c: number, at: number, cell: string): void {
    const action = this.plan.actions[c]!;
    if (action === act.time || action === act.date) this.takenDate = cell;
    else if (action === act.clock) this.takenClock = cell;
    else if (action === act.tag) this.takeTag(cell);
    else if (action === act.quality) this.quality.meet(c, this.odd.isBadText(cell));
    else if (action !== act.skip) this.store.putText(c, at, this.odd.valueOfText(cell));
  }

  private takeTag(cell: string): void {
    const bytes = encodeText(cell.trim(), this.file.encoding);
    this.tag = bytes.length === 0 ? -2 : this.tags.find(bytes, 0, bytes.length);
    if (this.tag === -1) this.lastUnknownTag = Object.values(partsOfTag(cell.trim())).join(' ').trim();
  }
}

function isOfValues(action: number): boolean {
  return action === act.number || action === act.running || action === act.flag;
}

/** Bytes of a text as they stand in a file of that encoding, for the characters that names are made of. */
function encodeText(text: string, encoding: LogFile['encoding']): Buffer {
  return encoding === 'windows-1252' ? Buffer.from(text, 'latin1') : Buffer.from(text, 'utf8');
}
