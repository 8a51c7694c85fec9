import type { SampledRow } from '../sources/sampled-row.js';
import type { Dialect } from '../../model/log-file.js';
import { LogProblem } from '../../model/problem.js';
import { openHandle } from '../sources/byte-source.js';
import { splitCells, usualCount } from './dialect.js';
import { decodeBytes } from '../sources/encoding.js';
import { isQuoteOpen } from '../sources/records.js';
import { asLineFeeds, headBytes, openText, type TextHead, type TextRef } from '../sources/text-source.js';

/** Lines from one stretch of a file. */
export interface SampledLines {
  /** Number of the first line, from 1; NaN where the stretch begins somewhere inside the file. */
  readonly firstLine: number;
  readonly lines: readonly string[];
}

const windowCount = 10;
const windowBytes = 24 * 1024;
const tailBytes = 64 * 1024;

/** Of a packed file a stretch every so many bytes is looked at, unpacked, as far as ten of them reach (own choice). */
const packedStrideBytes = 4 * 1024 * 1024;

/**
 * Takes lines from all over a file: its beginning, some stretches inside and its end. Of packed files no further than
 * {@link packedStrideBytes} allows, because nothing can be reached without unpacking all before it: those that unpack to
 * less than ten times as much show their end, too. Of UTF-16 only the beginning.
 */
export async function sampleLines(ref: TextRef, head: TextHead): Promise<SampledLines[]> {
  const firstLine = head.longLineBytes > 0 ? 2 : 1;
  const start = { firstLine, lines: linesOf(head.bytes, head, head.isWhole) };
  if (head.isWhole || head.encoding.startsWith('utf-16')) return [start];
  if (ref.container !== 'text') return [start, ...(await packedSamples(ref, head))];
  const file = await openHandle(ref.path);
  try {
    const samples = [start];
    for (const { from, length } of windowsOf(head.longLineBytes + head.bytes.length, head.sizeBytes)) {
      const buffer = Buffer.alloc(length);
      const { bytesRead } = await file.read(buffer, 0, length, from);
      if (ref.isReturnEnded) asLineFeeds(buffer);
      const isLast = from + bytesRead >= head.sizeBytes;
      const lines = linesOf(buffer.subarray(0, bytesRead), head, isLast).slice(1);
      samples.push({ firstLine: NaN, lines });
    }
    return samples;
  } finally {
    await file.close();
  }
}

/** A file that breaks off gives what came before; the reading tells it. */
async function packedSamples(ref: TextRef, head: TextHead): Promise<SampledLines[]> {
  const samples: SampledLines[] = [];
  const source = await openText(ref, head.encoding);
  const buffer = Buffer.alloc(headBytes);
  let nextAt = packedStrideBytes;
  let tail = Buffer.alloc(0);
  try {
    for (let at = 0, count = 1; count > 0 && samples.length < windowCount; at += count) {
      count = await source.fill(buffer, 0);
      if (count === 0) samples.push({ firstLine: NaN, lines: linesOf(tail, head, true).slice(1) });
      tail = Buffer.concat([tail, buffer.subarray(Math.max(0, count - windowBytes), count)]).subarray(-windowBytes);
      if (count === 0 || at < nextAt) continue;
      nextAt += packedStrideBytes;
      const lines = linesOf(buffer.subarray(0, Math.min(count, windowBytes)), head, false).slice(1);
      samples.push({ firstLine: NaN, lines });
    }
  } catch (error) {
    if (!(error instanceof LogProblem)) throw error;
  } finally {
    await source.close();
  }
  return samples;
}

function windowsOf(headLength: number, sizeBytes: number): { from: number; length: number }[] {
  const rest = sizeBytes - headLength - tailBytes;
  const windows = [];
  if (rest > windowCount * windowBytes)
    for (let i = 0; i < windowCount; i++)
      windows.push({ from: headLength + Math.floor(((i + 0.5) * rest) / windowCount), length: windowBytes });
  windows.push({ from: Math.max(headLength - 1024, sizeBytes - tailBytes), length: Math.min(tailBytes, sizeBytes) });
  return windows;
}

function linesOf(bytes: Buffer, head: TextHead, isWhole: boolean): string[] {
  const text = decodeBytes(bytes, head.encoding);
  const lines = text.split(/\r?\n/);
  if (!isWhole || lines.at(-1) === '') lines.pop();
  return lines;
}

const headRows = 400;
const innerRows = 120;
const tailRows = 150;
/** From the lines between the head and the next stretch, which are there anyhow, so many short stretches are taken. */
const betweenCount = 6;
const betweenRows = 30;
/** Wide rows say more each: above this many cells fewer rows are taken. */
const usualWidth = 12;

/** Cuts sampled lines into rows, as many as are needed to judge a file. The last stretch gives its last rows. */
export function sampleRows(samples: readonly SampledLines[], dialect: Dialect): SampledRow[] {
  const [head, ...others] = samples;
  const width = usualCount(head!.lines.slice(0, 50).map((line) => splitCells(line, dialect).length));
  const share = Math.min(1, usualWidth / width);
  const rowsOf = (rows: number): number => Math.ceil(rows * share);
  const most = Math.ceil(headRows * Math.max(0.4, share));
  // A file that was looked at in one piece: its end tells the last time.
  const last = others.at(-1) ?? head!;
  const tail = lastLines(
    last,
    Math.min(rowsOf(tailRows), last === head ? Math.max(0, head.lines.length - most) : Infinity),
  );
  const between = part(head!, most, head!.lines.length - (last === head ? tail.lines.length : 0));
  const stretches = [
    part(head!, 0, most),
    ...spread(between, betweenCount, rowsOf(betweenRows)),
    ...others.slice(0, -1).map((sample) => part(sample, 0, rowsOf(innerRows))),
    tail,
  ];
  return stretches
    .flatMap(({ firstLine, lines }, stretch) =>
      wholeRows(lines, dialect).map(({ text, at }) => ({
        stretch,
        line: firstLine + at,
        cells: splitCells(text, dialect),
      })),
    )
    .filter(({ cells }) => (cells.length > 1 || cells[0]!.trim() !== '') && !isRule(cells));
}

/** A quoted cell of a list may go on over so many lines (own choice). */
const mostLinesOfRow = 20;

/** Lines whose quoted cell goes on in the next put together, each row with the place of its first line. */
function wholeRows(lines: readonly string[], dialect: Dialect): { readonly text: string; readonly at: number }[] {
  const rows: { text: string; at: number }[] = [];
  for (let at = 0; at < lines.length; at++) {
    const end = endOfRow(lines, at, dialect);
    rows.push({ text: lines.slice(at, end).join('\n'), at });
    at = end - 1;
  }
  return rows;
}

/** Behind the last line of the row that begins at a line; behind that line where nothing closes its quote. */
function endOfRow(lines: readonly string[], at: number, dialect: Dialect): number {
  let isOpen = isQuoteOpen(lines[at]!, dialect);
  for (let end = at + 1; isOpen && end < Math.min(lines.length, at + mostLinesOfRow); end++) {
    isOpen = isQuoteOpen(lines[end]!, dialect, true);
    if (!isOpen) return end + 1;
  }
  return at + 1;
}

/** "-----+-----": a line that is drawn below the names. */
function isRule(cells: readonly string[]): boolean {
  return /^[\s|+:]*[-=_]{3}[-=_\s|+:]*$/.test(cells.join('|'));
}

function part({ firstLine, lines }: SampledLines, from: number, to: number): SampledLines {
  return { firstLine: firstLine + from, lines: lines.slice(from, to) };
}

function lastLines(sample: SampledLines, count: number): SampledLines {
  return part(sample, Math.max(0, sample.lines.length - count), sample.lines.length);
}

/** Stretches of `rows` lines, evenly over a longer one; all of it where it is too short for that. */
function spread(sample: SampledLines, count: number, rows: number): SampledLines[] {
  const { length } = sample.lines;
  if (length === 0) return [];
  if (length <= count * rows) return [sample];
  return Array.from({ length: count }, (_, i) => {
    const from = Math.floor((i * (length - rows)) / (count - 1));
    return part(sample, from, from + rows);
  });
}

/** The cells of all sampled lines that do not begin with a number, and of the first line behind each. */
export function* cellsOfLines(samples: readonly SampledLines[], dialect: Dialect): Generator<string[]> {
  let wasRow = false;
  for (const text of samples.flatMap(({ lines }) => lines)) {
    const isRow = /^\W*\d/.test(text);
    if (!isRow || !wasRow) yield splitCells(text, dialect);
    wasRow = isRow;
  }
}
