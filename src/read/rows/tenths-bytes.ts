import type { Dialect } from '../../model/log-file.js';

const zero = 48;
/** Blanks may come in runs, so no single one ends a cell. */
const notOne = -1;
/** Four digits, one bit pattern: the high half of each byte, and what a digit above 9 carries into it. */
const digitBytes = 0x30303030;

/**
 * Reads the cells that fill nearly every temperature log – `ddd.d` and `dd.d` – four bytes at a time: the same double
 * that `putNumber` gives, in half the time (measured).
 */
export class TenthsBytes {
  private bytes: Uint8Array = new Uint8Array(0);
  private view: DataView = new DataView(new ArrayBuffer(0));
  private lastStart = 0;
  private readonly markBehindThree: number;
  private readonly markBehindTwo: number;

  private readonly separator: number;

  constructor({ separator, decimal }: Pick<Dialect, 'separator' | 'decimal'>) {
    this.separator = separator === ' ' ? notOne : separator.charCodeAt(0);
    const code = decimal.charCodeAt(0) ^ zero;
    this.markBehindThree = digitBytes ^ (code << 24);
    this.markBehindTwo = digitBytes ^ (code << 16);
  }

  /** Says which bytes are read from now on. */
  lookAt(bytes: Buffer): void {
    if (bytes === this.bytes) return;
    this.bytes = bytes;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.lastStart = bytes.length - 6;
  }

  /** Puts the number into `into[place]`; returns the first byte of the next cell, or -1 when this one is not of this kind. */
  put(start: number, into: Float64Array, place: number): number {
    if (start > this.lastStart) return -1;
    const four = this.view.getInt32(start, true);
    const three = four ^ this.markBehindThree;
    if (((three | (three + 0x060606)) & 0xfff0f0f0) === 0) {
      const tenths = this.bytes[start + 4]! - zero;
      if (tenths < 0 || tenths > 9 || this.bytes[start + 5] !== this.separator) return -1;
      into[place] = ((three & 15) * 1000 + ((three >> 8) & 15) * 100 + (three >> 16) * 10 + tenths) / 10;
      return start + 6;
    }
    const two = four ^ this.markBehindTwo;
    if (((two | (two + 0x06000606)) & 0xf0fff0f0) !== 0 || this.bytes[start + 4] !== this.separator) return -1;
    into[place] = ((two & 15) * 100 + ((two >> 8) & 15) * 10 + (two >> 24)) / 10;
    return start + 5;
  }
}
