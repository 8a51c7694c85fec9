import { decodeBytes } from './encoding.js';
import { longLineText, type OnBadRow } from './records.js';
import type { RowSource } from './table-part.js';
import { longestLine, openText } from './text-source.js';

const byteOf = (char: string): number => char.charCodeAt(0);
const [openBrace, closeBrace, openBracket, closeBracket] = ['{', '}', '[', ']'].map(byteOf) as [
  number,
  number,
  number,
  number,
];
const [quote, backslash, lineFeed] = [byteOf('"'), byteOf('\\'), byteOf('\n')];
const chunkBytes = 64 * 1024;

/**
 * Cuts the objects out of a text of JSON that stand so many brackets deep, in bounded memory. An object longer than a row
 * may be is told to `onBadRow` and left out. Throws LogProblem when the file cannot be read further.
 */
export async function* cutObjects(
  source: RowSource,
  depth: number,
  onBadRow: OnBadRow,
): AsyncGenerator<{ line: number; text: string }> {
  const cutter = new ObjectCutter(depth);
  const bytes = await openText(source, source.encoding);
  const chunk = Buffer.allocUnsafe(chunkBytes);
  try {
    for (let count = await bytes.fill(chunk, 0); count > 0; count = await bytes.fill(chunk, 0))
      for (const { line, parts, length } of cutter.cut(chunk.subarray(0, count)))
        if (length <= longestLine) yield { line, text: decodeBytes(Buffer.concat(parts), source.encoding) };
        else
          onBadRow(
            line,
            'long-line',
            longLineText({ number: line, bytes: length, start: parts[0]!.subarray(0, 40) }, source.encoding),
          );
    if (cutter.isInside) onBadRow(cutter.beginLine, 'bad-json', 'the file ends within an object');
  } finally {
    await bytes.close();
  }
}

interface CutObject {
  readonly line: number;
  readonly parts: readonly Buffer[];
  readonly length: number;
}

/** Follows brackets and strings from chunk to chunk; all marks are ASCII in every encoding that comes here. */
class ObjectCutter {
  isInside = false;
  beginLine = 1;
  private line = 1;
  private depth = 0;
  private isString = false;
  private isEscaped = false;
  private parts: Buffer[] = [];
  private length = 0;

  constructor(private readonly wantedDepth: number) {}

  *cut(chunk: Buffer): Generator<CutObject> {
    let from = 0;
    for (let i = 0; i < chunk.length; i++) {
      const byte = chunk[i]!;
      if (byte === lineFeed) this.line++;
      if (this.isString) this.passString(byte);
      else if (byte === quote) this.isString = true;
      else if (byte === openBrace || byte === openBracket) {
        if (byte === openBrace && this.depth === this.wantedDepth) {
          from = i;
          this.begin();
        }
        this.depth++;
      } else if (byte === closeBrace || byte === closeBracket) {
        this.depth--;
        if (!this.isInside || this.depth !== this.wantedDepth) continue;
        this.keep(chunk.subarray(from, i + 1));
        this.isInside = false;
        yield { line: this.beginLine, parts: this.parts, length: this.length };
      }
    }
    if (this.isInside) this.keep(chunk.subarray(from));
  }

  private passString(byte: number): void {
    if (this.isEscaped) this.isEscaped = false;
    else if (byte === backslash) this.isEscaped = true;
    else if (byte === quote) this.isString = false;
  }

  private begin(): void {
    this.isInside = true;
    this.beginLine = this.line;
    this.parts = [];
    this.length = 0;
  }

  /** What is too long to be a row is counted, and only its beginning kept. */
  private keep(bytes: Buffer): void {
    this.length += bytes.length;
    if (this.length <= longestLine || this.parts.length === 0) this.parts.push(Buffer.from(bytes));
  }
}
