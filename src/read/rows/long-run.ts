import { cellMark, type LogFile, type TagBatch } from '../../model/log-file.js';
import type { TimeBytes } from '../times/time-bytes.js';
import type { CellBounds } from './cell-bounds.js';
import { putNumber } from './number-bytes.js';
import type { OddCells } from './odd-cells.js';
import { act, type RowPlan } from './row-plan.js';
import type { TagTable } from './tag-table.js';

const lineFeed = 10;
const carriageReturn = 13;
/** Cells that a run can read; of the time, the tag and the number there must be one each. */
const readable: readonly number[] = [act.time, act.tag, act.number, act.quality, act.skip];

/** What a run shares with the scanner of its file, so that both know the row before. */
export interface RunParts {
  readonly plan: RowPlan;
  readonly bounds: CellBounds;
  readonly odd: OddCells;
  readonly time: TimeBytes;
  readonly tags: TagTable;
}

/** True for a file whose rows say one number of one tag each, with nothing to be put together. */
export function canRun({ rowWidth }: Pick<LogFile, 'rowWidth'>, { plan, bounds }: RunParts): boolean {
  const actions = [...plan.actions];
  const isOnce = [act.time, act.tag, act.number].every(
    (one) => actions.filter((action) => action === one).length === 1,
  );
  const isReadable = actions.every((action) => readable.includes(action));
  return isOnce && isReadable && rowWidth <= plan.columnCount && !bounds.isBlankApart;
}

/**
 * Reads the rows that fill nearly every long log – a time and a tag that follow from the row before, a plain number, a
 * good quality – straight into the batch, as many as follow each other: the entries that `RowScanner` makes row by row,
 * in half the time (measured).
 */
export class LongRun {
  /** Rows of the last run. */
  rowCount = 0;
  private readonly actions: Uint8Array;
  private readonly decimal: number;
  /** By tag. */
  private readonly isKept: readonly boolean[];
  private readonly isNumber: readonly boolean[];
  private readonly entry = new Float64Array(1);
  /** The bytes that are read, four at a time. */
  private words: DataView = new DataView(new ArrayBuffer(0));
  /** Where the time stands that was read last. */
  private timeFrom = 0;
  /** Its bytes; 0 = none was read. */
  private timeLength = 0;

  constructor(
    { dialect, tags }: Pick<LogFile, 'dialect' | 'tags'>,
    private readonly parts: RunParts,
    private readonly batch: TagBatch,
    private readonly mostEntries: number,
  ) {
    this.actions = parts.plan.actions;
    this.decimal = dialect.decimal.charCodeAt(0);
    this.isKept = tags.map(({ role }) => role !== 'ignored');
    this.isNumber = tags.map(({ role }) => role !== 'running' && role !== 'alarm');
  }

  /**
   * Takes rows from `start` on, up to one that is out of the ordinary or until the batch is full.
   *
   * @param end Behind the last whole line. @param firstLine Number of the first row.
   * @param passes Whether a time is where the file is at home.
   * @returns First byte that was not read; `rowCount` is set.
   */
  take(bytes: Buffer, start: number, end: number, firstLine: number, passes: (ms: number) => boolean): number {
    const { batch, entry, mostEntries } = this;
    const { clockMs, tag, value, mark, line } = batch;
    const { time, tags } = this.parts;
    let length = batch.length;
    this.words = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.timeLength = 0;
    let rows = 0;
    let passedMs = NaN;
    let p = start;
    for (; p < end && length < mostEntries; rows++) {
      const before = tags.number;
      const next = this.endOfRow(bytes, p);
      const number = tags.number;
      if (next < 0 || !this.isNumber[number] || (time.ms !== passedMs && !passes(time.ms))) {
        tags.number = before;
        break;
      }
      passedMs = time.ms;
      p = next;
      if (!this.isKept[number]) continue;
      clockMs[length] = passedMs;
      tag[length] = number;
      value[length] = entry[0]!;
      mark[length] = cellMark.number;
      line[length] = firstLine + rows;
      length++;
    }
    batch.length = length;
    this.rowCount = rows;
    return p;
  }

  /** Behind the row whose cells were read; -1 when it is out of the ordinary. */
  private endOfRow(bytes: Buffer, start: number): number {
    const { actions } = this;
    const { separator } = this.parts.bounds;
    const last = actions.length - 1;
    let p = start;
    for (let c = 0; c < last; c++) {
      p = this.endOfCell(actions[c]!, bytes, p);
      if (p < 0 || bytes[p] !== separator) return -1;
      p++;
    }
    p = this.endOfCell(actions[last]!, bytes, p);
    if (p < 0) return -1;
    if (bytes[p] === carriageReturn) p++;
    return bytes[p] === lineFeed ? p + 1 : -1;
  }

  private endOfCell(action: number, bytes: Buffer, start: number): number {
    if (action === act.number) return putNumber(bytes, start, this.decimal, this.entry, 0);
    if (action === act.time) return this.endOfTime(bytes, start);
    if (action === act.tag) return this.parts.tags.skim(bytes, start);
    const end = this.parts.bounds.endOf(bytes, start);
    return action === act.quality && end >= 0 && this.parts.odd.isBad(bytes, start, end) ? -1 : end;
  }

  private endOfTime(bytes: Buffer, start: number): number {
    const { words, timeFrom, timeLength } = this;
    if (timeLength > 0 && isSame(words, start, timeFrom, timeLength)) return start + timeLength;
    const end = this.parts.time.skim(bytes, start);
    this.timeFrom = start;
    this.timeLength = end - start;
    return end;
  }
}

/** Whether the bytes from `a` on are those from `b` on, which stand before them; four at a time. */
function isSame(words: DataView, a: number, b: number, length: number): boolean {
  if (a + length > words.byteLength) return false;
  let i = 0;
  for (; i + 4 <= length; i += 4) if (words.getInt32(a + i) !== words.getInt32(b + i)) return false;
  for (; i < length; i++) if (words.getUint8(a + i) !== words.getUint8(b + i)) return false;
  return true;
}
