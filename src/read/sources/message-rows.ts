import { longLineText, type OnBadRow } from './records.js';
import { inParts, type RowSource, type TablePart, type TableRow } from './table-part.js';
import { readLines } from './text-source.js';

/** Names of what each line is made into. */
const header = ['time', 'priority', 'message'] as const;
/** "[2026-03-02 06:00:00] ", in any order of the day. A comma before another day is no decimal of the second. */
const stamp =
  /^[\s[(]*((?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4})[T ,]\s?\d{1,2}:\d{2}(?::\d{2})?(?:[.,](?!\d{1,4}[-/.]\d{1,2}[-/.]\d)\d+)?(?:\s?[AP]M)?(?:Z|[+-]\d{2}:?\d{2})?)(?![\d:]|\s?[AP]M\b)[\])]*[\s:,-]+/i;
/** What programs write before a message (RFC 5424, 6.2.1, and common practice). */
const level =
  /^\W*(debug|info(?:rmation)?|notice|warn(?:ing)?|error|err|crit(?:ical)?|fatal|alert|emergency)\b[\s\]):,-]+/i;
/** So many of the lines are of this kind (own choice). */
const leastShare = 0.9;

/** Whether sampled lines each hold a time and then words, as a log of messages is written. */
export function areMessages(lines: readonly string[]): boolean {
  const filled = lines.filter((line) => line.trim() !== '');
  return filled.length > 1 && filled.filter(isMessage).length >= leastShare * filled.length;
}

/** The time that a line begins with, without what stands around it; null where it begins with none. */
export function timeAtFront(line: string): string | null {
  return stamp.exec(line)?.[1] ?? null;
}

/** What stands directly behind the time that a line begins with; null where it begins with none. */
export function behindTime(line: string): string | null {
  const time = stamp.exec(line)?.[1];
  return time === undefined ? null : line.slice(line.indexOf(time) + time.length);
}

function isMessage(line: string): boolean {
  const found = stamp.exec(line);
  if (!found) return false;
  const words = line.slice(found[0].length).split(/\s+/);
  return words.filter((word) => /\p{L}{2}/u.test(word)).length >= Math.max(2, words.length / 2);
}

/** Every line as time, level and message. */
export function readMessages(source: RowSource, onBadRow: OnBadRow): AsyncGenerator<TablePart> {
  return inParts(rowsOf(source, onBadRow));
}

async function* rowsOf(source: RowSource, onBadRow: OnBadRow): AsyncGenerator<TableRow> {
  yield { line: 0, cells: header };
  const onLongLine = (line: Parameters<typeof longLineText>[0]): void =>
    onBadRow(line.number, 'long-line', longLineText(line, source.encoding));
  for await (const { number, text } of readLines(source, source.encoding, onLongLine)) {
    if (text.trim() === '') continue;
    const found = stamp.exec(text);
    const rest = found ? text.slice(found[0].length) : text;
    const said = level.exec(rest);
    yield { line: number, cells: [found?.[1] ?? '', said?.[1] ?? '', said ? rest.slice(said[0].length) : rest] };
  }
}
