import type { LogFile } from '../../model/log-file.js';
import { openGzip, openPlain, statOf, type ByteSource } from './byte-source.js';
import { asAsciiCompatible, decodeLine, detectEncoding, looksBinary, type Encoding } from './encoding.js';
import { openZipEntry } from './zip-source.js';

/** Where text is to be found: a file, a packed file, or one entry of an archive. */
export type TextRef = Pick<LogFile, 'name' | 'path' | 'part' | 'container' | 'isReturnEnded'> & {
  /** Size on disk when it was first looked at, where it was. */
  readonly sizeBytes?: number;
};

const lineFeed = 10;
const carriageReturn = 13;

/** How many bytes of the beginning are looked at to understand a file. */
export const headBytes = 256 * 1024;

/** What the first bytes tell. */
export interface TextHead {
  readonly encoding: Encoding;
  /** First bytes without mark, UTF-8 or Windows-1252 (UTF-16 is turned into UTF-8). */
  readonly bytes: Buffer;
  /** The same, a first line that is too long for a row among them. */
  readonly beginning: Buffer;
  /** Bytes of a first line that is too long for a row; it is left out of `bytes`. 0 = there is none. */
  readonly longLineBytes: number;
  /** True when `bytes` is the whole file. */
  readonly isWhole: boolean;
  readonly isBinary: boolean;
  /** Size on disk, packed where it is packed. */
  readonly sizeBytes: number;
}

/** Reads the first bytes of a text. Throws LogProblem when it cannot be opened or unpacked. */
export async function readHead(ref: TextRef): Promise<TextHead> {
  const sizeBytes = (await statOf(ref.path)).size;
  const raw = await firstBytes(openRaw(ref));
  const { encoding, markBytes } = detectEncoding(raw.subarray(0, 64 * 1024));
  const isWhole = raw.length < headBytes;
  const isWide = encoding.startsWith('utf-16');
  const bytes = isWide ? Buffer.from(new TextDecoder(encoding).decode(raw), 'utf8') : raw.subarray(markBytes);
  if (ref.isReturnEnded) asLineFeeds(bytes);
  const isBinary = !isWide && looksBinary(raw);
  const head = { encoding, bytes, beginning: bytes, longLineBytes: 0, isWhole, isBinary, sizeBytes };
  if (isWhole || head.isBinary || bytes.includes(lineFeed)) return head;
  return { ...head, ...(await behindFirstLine(ref, encoding)) };
}

/** A first line that is longer than what is looked at: finds its end and takes what follows. */
async function behindFirstLine(
  ref: TextRef,
  encoding: Encoding,
): Promise<Pick<TextHead, 'bytes' | 'isWhole' | 'longLineBytes'>> {
  const source = await openText(ref, encoding);
  const buffer = Buffer.alloc(headBytes);
  let longLineBytes = 0;
  try {
    for (let count = await source.fill(buffer, 0); count > 0; count = await source.fill(buffer, 0)) {
      const at = buffer.subarray(0, count).indexOf(lineFeed);
      longLineBytes += at < 0 ? count : at;
      if (at < 0) continue;
      buffer.copyWithin(0, at + 1, count);
      const length = await fillUp(source, buffer, count - at - 1);
      return { bytes: buffer.subarray(0, length), isWhole: length < headBytes, longLineBytes };
    }
  } finally {
    await source.close();
  }
  return { bytes: buffer.subarray(0, 0), isWhole: true, longLineBytes };
}

async function firstBytes(opening: Promise<ByteSource>): Promise<Buffer> {
  const source = await opening;
  const buffer = Buffer.alloc(headBytes);
  try {
    return buffer.subarray(0, await fillUp(source, buffer, 0));
  } finally {
    await source.close();
  }
}

/** Fills a buffer from a place on; returns how far it is filled, which is less than all only at the end of the text. */
async function fillUp(source: ByteSource, buffer: Buffer, from: number): Promise<number> {
  let length = from;
  for (let count = 1; count > 0 && length < buffer.length; length += count) count = await source.fill(buffer, length);
  return length;
}

/** Opens a text for reading from its beginning as UTF-8 or Windows-1252 bytes. A mark may stand in front. */
export async function openText(ref: TextRef, encoding: Encoding): Promise<ByteSource> {
  const source = asAsciiCompatible(await openRaw(ref), encoding);
  if (!ref.isReturnEnded) return source;
  return {
    async fill(target, at) {
      const count = await source.fill(target, at);
      asLineFeeds(target.subarray(at, at + count));
      return count;
    },
    close: () => source.close(),
  };
}

/** Puts line feeds in the place of carriage returns, for texts whose lines end with these alone. */
export function asLineFeeds(bytes: Buffer): void {
  for (let at = bytes.indexOf(carriageReturn); at >= 0; at = bytes.indexOf(carriageReturn, at + 1))
    bytes[at] = lineFeed;
}

async function openRaw(ref: TextRef): Promise<ByteSource> {
  if (ref.container === 'gzip') return openGzip(ref.path);
  if (ref.container === 'zip') return openZipEntry(ref.path, ref.part ?? '');
  return openPlain(ref.path, ref.sizeBytes);
}

/** One line of text without its end. */
export interface Line {
  /** From 1. */
  readonly number: number;
  readonly text: string;
  /** False for a last line that has no end: the file may still be being written. */
  readonly isEnded: boolean;
}

/** A line that was skipped, once its end is known. */
export interface LongLine {
  /** From 1. */
  readonly number: number;
  readonly bytes: number;
  /** Its first bytes. */
  readonly start: Buffer;
}

/**
 * Lines of a text, a few at a time, in bounded memory. Lines longer than {@link longestLine} are skipped and told
 * to `onLongLine`. Throws LogProblem when the file cannot be read further.
 */
export async function* readLines(
  ref: TextRef,
  encoding: Encoding,
  onLongLine: (line: LongLine) => void = () => undefined,
): AsyncGenerator<Line> {
  const window = new LineWindow(await openText(ref, encoding), onLongLine);
  try {
    while (await window.more()) {
      for (let line = window.next(); line; line = window.next()) {
        const text = decodeLine(window.buffer.subarray(line.start, line.end), encoding);
        yield { number: line.number, text, isEnded: line.isEnded };
      }
    }
  } finally {
    await window.close();
  }
}

/** A row of a log is a few hundred characters; a megabyte without a line end is not a row. */
export const longestLine = 1024 * 1024;
/** Bytes of it that are shown. */
const longLineShown = 40;

export interface LinePlace {
  start: number;
  /** Behind the last byte, without line end. */
  end: number;
  number: number;
  isEnded: boolean;
  /** True when a carriage return stands between `end` and the line end. */
  hasReturn: boolean;
}

/**
 * A window that moves over the bytes of a text so that it always holds whole lines. The scanners read the buffer
 * directly: between two calls of `more`, everything from `start` to `end` is whole lines.
 */
export class LineWindow {
  readonly buffer: Buffer;
  /** First byte not yet consumed. */
  start = 0;
  /** Behind the last whole line. */
  end = 0;
  /** Number of the line at `start`, from 1. */
  line = 1;
  /** True when nothing comes behind the bytes up to `end`. */
  isFinal = false;
  private filled = 0;
  private isAtEnd = false;
  /** Null unless a line longer than the window is being skipped. */
  private skipped: { bytes: number; readonly start: Buffer } | null = null;
  private isFirst = true;

  constructor(
    private readonly source: ByteSource,
    private readonly onLongLine: (line: LongLine) => void = () => undefined,
    sizeBytes = longestLine,
  ) {
    this.buffer = Buffer.allocUnsafe(sizeBytes);
  }

  /** Moves on until at least one whole line is in the window; false at the end of the text. */
  async more(): Promise<boolean> {
    for (;;) {
      this.keepRest();
      if (this.isAtEnd) return this.lastLine();
      const count = await this.source.fill(this.buffer, this.filled);
      if (count === 0) this.isAtEnd = true;
      this.filled += count;
      if (this.isFirst && this.filled >= 3) this.skipMark();
      if (this.findEnd()) return true;
    }
  }

  /** Next line of the window, or null when it holds no more whole lines. */
  next(): LinePlace | null {
    if (this.start >= this.end) return null;
    const found = this.buffer.indexOf(lineFeed, this.start);
    const isEnded = found >= 0 && found < this.end;
    const stop = isEnded ? found : this.end;
    const end = this.trimReturn(this.start, stop);
    const line = { start: this.start, end, number: this.line, isEnded, hasReturn: end < stop };
    this.start = isEnded ? stop + 1 : this.end;
    this.line++;
    return line;
  }

  close(): Promise<void> {
    return this.source.close();
  }

  private trimReturn(start: number, end: number): number {
    return end > start && this.buffer[end - 1] === carriageReturn ? end - 1 : end;
  }

  private keepRest(): void {
    if (this.start > 0) this.buffer.copyWithin(0, this.start, this.filled);
    this.filled -= this.start;
    this.start = 0;
    this.end = 0;
  }

  private skipMark(): void {
    this.isFirst = false;
    if (this.buffer[0] === 0xef && this.buffer[1] === 0xbb && this.buffer[2] === 0xbf) this.start = 3;
  }

  private findEnd(): boolean {
    if (this.skipped && !this.leaveLongLine(this.skipped)) return false;
    const last = this.filled > this.start ? this.buffer.lastIndexOf(lineFeed, this.filled - 1) : -1;
    if (last >= this.start) {
      this.end = last + 1;
      return true;
    }
    if (this.filled === this.buffer.length) this.enterLongLine();
    return false;
  }

  private enterLongLine(): void {
    const start = Buffer.from(this.buffer.subarray(this.start, this.start + longLineShown));
    this.skipped = { bytes: this.filled - this.start, start };
    this.start = this.filled;
  }

  /** True when the end of the long line is in the window. */
  private leaveLongLine(skipped: { bytes: number; readonly start: Buffer }): boolean {
    const found = this.buffer.indexOf(lineFeed, this.start);
    const isEnded = found >= 0 && found < this.filled;
    skipped.bytes += (isEnded ? found : this.filled) - this.start;
    this.start = isEnded ? found + 1 : this.filled;
    if (isEnded) this.tellLongLine(skipped);
    return isEnded;
  }

  private tellLongLine(skipped: { bytes: number; readonly start: Buffer }): void {
    this.onLongLine({ number: this.line, ...skipped });
    this.line++;
    this.skipped = null;
  }

  private lastLine(): boolean {
    this.isFinal = true;
    if (this.skipped) this.tellLongLine(this.skipped);
    if (this.filled === 0) return false;
    this.end = this.filled;
    return true;
  }
}
