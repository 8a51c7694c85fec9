import type { Dialect } from '../../model/log-file.js';

const lineFeed = 10;
const carriageReturn = 13;
const blank = 32;
const tab = 9;

/** Finds where cells of a dialect end, byte by byte. */
export class CellBounds {
  readonly separator: number;
  readonly quote: number;
  /** True when runs of blanks and tabs part cells. */
  readonly isBlankApart: boolean;
  /** 1 for every byte that ends a plain cell or makes it one that is not plain. */
  private readonly isSpecial = new Uint8Array(256);

  constructor({ separator, quote }: Dialect) {
    this.separator = separator.charCodeAt(0);
    this.quote = quote === '' ? -1 : quote.charCodeAt(0);
    this.isBlankApart = separator === ' ';
    for (const byte of [this.separator, lineFeed, carriageReturn, 0]) this.isSpecial[byte] = 1;
    if (this.quote >= 0) this.isSpecial[this.quote] = 1;
    if (this.isBlankApart) this.isSpecial[tab] = 1;
  }

  /** True for a byte behind which a cell is over. */
  isEnd(byte: number): boolean {
    return (
      byte === this.separator || byte === lineFeed || byte === carriageReturn || (byte === tab && this.isBlankApart)
    );
  }

  /** True for a text that can stand in a cell as it is. */
  isPlain(text: Buffer): boolean {
    const isTrimmed = text.length > 0 && text[0] !== blank && text.at(-1) !== blank;
    return isTrimmed && text.every((byte) => this.isSpecial[byte] === 0);
  }

  /** Behind the cell that begins at `start`; -1 for a quoted cell that is not plain. A quoted cell ends behind its quote. */
  endOf(bytes: Buffer, start: number): number {
    if (bytes[start] === this.quote) return this.endOfQuoted(bytes, start);
    let q = start;
    while (this.isSpecial[bytes[q]!] === 0) q++;
    const b = bytes[q]!;
    if (b === carriageReturn) return bytes[q + 1] === lineFeed ? q : -1;
    return b === this.quote || b === 0 ? -1 : q;
  }

  private endOfQuoted(bytes: Buffer, start: number): number {
    let q = start + 1;
    for (; bytes[q] !== this.quote; q++) if (bytes[q] === lineFeed || bytes[q] === 0) return -1;
    q++;
    return this.isEnd(bytes[q]!) ? q : -1;
  }

  skipBlanks(bytes: Buffer, start: number): number {
    let p = start;
    while (bytes[p] === blank || bytes[p] === tab) p++;
    return p;
  }
}
