import { cellMark, type LogFile } from '../../model/log-file.js';
import { flagOfNumber, readFlagWord } from './flag-cell.js';
import { isBadQuality, readCell, readRunningWord } from './cell-value.js';
import { decodeBytes } from '../sources/encoding.js';

/** What a cell that should hold a number says. */
export interface TextValue {
  /** NaN unless `mark` is number. */
  readonly value: number;
  readonly mark: number;
  /** 1 = runs, 0 = stands, NaN = says neither. */
  readonly running: number;
  /** What it says as an alarm flag: one of {@link flagState}; NaN = nothing. */
  readonly flag: number;
}

/** Distinct texts remembered; a log with more holds free text in a number column. */
const mostTexts = 5000;

/** Bytes of a quality that are compared with those of the one before; a longer one is looked up each time. */
const longestQuality = 32;

/** Reads cells that are no plain number, and remembers what each text said: a log has few of them, often repeated. */
export class OddCells {
  private readonly texts = new Map<string, TextValue>();
  private readonly qualities = new Map<string, boolean>();
  private readonly empty: TextValue;
  /** The quality that was read last: nearly all say the same. */
  private readonly lastQuality = new Uint8Array(longestQuality);
  private lastLength = -1;
  private lastIsBad = false;

  constructor(private readonly file: Pick<LogFile, 'dialect' | 'encoding' | 'goodStatus'>) {
    this.empty = this.valueOfText('');
  }

  /** What the bytes from `from` to `to` say. */
  valueOf(bytes: Buffer, from: number, to: number): TextValue {
    if (from === to) return this.empty;
    const key = bytes.toString('latin1', from, to);
    const known = this.texts.get(key);
    if (known) return known;
    const value = this.valueOfText(decodeBytes(bytes.subarray(from, to), this.file.encoding));
    if (this.texts.size < mostTexts) this.texts.set(key, value);
    return value;
  }

  valueOfText(text: string): TextValue {
    const { value, mark } = readCell(text, this.file.dialect);
    const isNumber = mark === cellMark.number;
    const flag = isNumber ? flagOfNumber(value) : readFlagWord(text);
    return { value, mark, running: isNumber ? NaN : readRunningWord(text), flag };
  }

  /** True when the quality cell from `from` to `to` says bad. */
  isBad(bytes: Buffer, from: number, to: number): boolean {
    if (!this.isLastQuality(bytes, from, to)) {
      this.lastIsBad = this.lookUp(bytes, from, to);
      this.lastLength = to - from <= longestQuality ? to - from : -1;
      for (let i = 0; i < this.lastLength; i++) this.lastQuality[i] = bytes[from + i]!;
    }
    return this.lastIsBad;
  }

  private isLastQuality(bytes: Buffer, from: number, to: number): boolean {
    if (to - from !== this.lastLength) return false;
    for (let i = 0; i < this.lastLength; i++) if (bytes[from + i] !== this.lastQuality[i]) return false;
    return true;
  }

  private lookUp(bytes: Buffer, from: number, to: number): boolean {
    const key = bytes.toString('latin1', from, to);
    const known = this.qualities.get(key);
    if (known !== undefined) return known;
    const isBad = this.isBadText(decodeBytes(bytes.subarray(from, to), this.file.encoding));
    if (this.qualities.size < mostTexts) this.qualities.set(key, isBad);
    return isBad;
  }

  isBadText(text: string): boolean {
    return isBadQuality(text, this.file.goodStatus);
  }
}
