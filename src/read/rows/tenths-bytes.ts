import type { Dialect } from '../../model/log-file.js';
import type { RowPlan } from './row-plan.js';

const zero = 48;
/** Blanks may come in runs, so no single one ends a cell. */
const notOne = -1;
/** Four digits, one bit pattern: the high half of each byte, and what a digit above 9 carries into it. */
const digitBytes = 0x30303030;

/** The numbers of a batch, as {@link RowPlan} lays them out, and where runs of columns of numbers end. */
type Places = Pick<RowPlan, 'numbers' | 'firstPlace' | 'runEnd'>;

/**
 * Reads the cells that fill nearly every temperature log – `ddd.d` and `dd.d` – four bytes at a time and column by column:
 * the same doubles that `putNumber` gives, in half the time (measured).
 */
export class TenthsBytes {
  /** Where the cell begins that `putRun` did not read. */
  behind = 0;
  private bytes: Uint8Array = new Uint8Array(0);
  private words: DataView = new DataView(new ArrayBuffer(0));
  private lastStart = 0;
  private readonly markBehindThree: number;
  private readonly markBehindTwo: number;
  private readonly separator: number;

  constructor(
    { separator, decimal }: Pick<Dialect, 'separator' | 'decimal'>,
    private readonly places: Places,
  ) {
    this.separator = separator === ' ' ? notOne : separator.charCodeAt(0);
    const code = decimal.charCodeAt(0) ^ zero;
    this.markBehindThree = digitBytes ^ (code << 24);
    this.markBehindTwo = digitBytes ^ (code << 16);
  }

  /** Says which bytes are read from now on. */
  lookAt(bytes: Buffer): void {
    if (bytes === this.bytes) return;
    this.bytes = bytes;
    this.words = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.lastStart = bytes.length - 6;
  }

  /**
   * Puts the numbers of a row into place, from the cell of a column on as far as cells are of this kind.
   *
   * @param start First byte of the cell. @param at Place of the row in the batch.
   * @returns First column that was not read; `behind` is set.
   */
  putRun(start: number, column: number, at: number): number {
    const { bytes, words, lastStart, markBehindThree, markBehindTwo, separator } = this;
    const { numbers, firstPlace, runEnd } = this.places;
    const end = runEnd[column]!;
    let p = start;
    let c = column;
    for (; c < end && p <= lastStart; c++) {
      const four = words.getInt32(p, true);
      const three = four ^ markBehindThree;
      if (((three | (three + 0x060606)) & 0xfff0f0f0) === 0) {
        const tenths = bytes[p + 4]! - zero;
        if (tenths < 0 || tenths > 9 || bytes[p + 5] !== separator) break;
        numbers[firstPlace[c]! + at] =
          ((three & 15) * 1000 + ((three >> 8) & 15) * 100 + (three >> 16) * 10 + tenths) / 10;
        p += 6;
        continue;
      }
      const two = four ^ markBehindTwo;
      if (((two | (two + 0x06000606)) & 0xf0fff0f0) !== 0 || bytes[p + 4] !== separator) break;
      numbers[firstPlace[c]! + at] = ((two & 15) * 100 + ((two >> 8) & 15) * 10 + (two >> 24)) / 10;
      p += 5;
    }
    this.behind = p;
    return c;
  }
}
