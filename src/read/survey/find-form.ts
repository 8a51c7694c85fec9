import type { Dialect, RowForm } from '../../model/log-file.js';
import { LogProblem } from '../../model/problem.js';
import { splitCells, usualCount } from '../layout/dialect.js';
import { areAssignments, assignmentsOf } from '../sources/assignment-rows.js';
import { areMessages, behindTime } from '../sources/message-rows.js';
import { decodeBytes } from '../sources/encoding.js';
import { jsonPlaceOf } from '../sources/json-place.js';
import { jsonFormOf } from '../sources/json-rows.js';
import type { RowSource } from '../sources/table-part.js';
import type { TextHead } from '../sources/text-source.js';

/** Lines of the beginning that show whether names stand beside the values in each (own choice). */
const linesLookedAt = 60;
/** So many rows hold a number in a column of values (own choice). */
const leastShare = 0.9;
const blanks: Dialect = { separator: ' ', decimal: '.', thousands: '', quote: '"' };

/**
 * The form of a text whose rows name their values, JSON or "name=value", or are a time and a message. A file of names is
 * read through once for them.
 *
 * @returns undefined for a text of another kind. Throws LogProblem for one that holds no rows in a way that can be read.
 */
export async function findForm(source: RowSource, head: TextHead): Promise<RowForm | undefined> {
  const text = decodeBytes(head.beginning, head.encoding);
  const isWhole = head.isWhole && head.longLineBytes === 0;
  if (/^\s*<[!?\p{L}]/u.test(text)) throw markup(source.name);
  if (/^\s*(?:\{\s*["}]|\[\s*[[{"])/.test(text)) {
    const place = jsonPlaceOf(text, isWhole);
    const form = place && (await jsonFormOf(source, place));
    if (form) return form;
    throw withoutObjects(source.name);
  }
  const lines = text.split('\n').slice(0, linesLookedAt);
  if (head.longLineBytes > 0) return undefined;
  if (areAssignments(lines)) return (await assignmentsOf(source)) ?? undefined;
  return areMessages(lines) && isUncut(lines) ? { kind: 'messages' } : undefined;
}

/** The lines are no table: neither a mark stands behind most times, nor do blanks part cells of which one is a value. */
function isUncut(lines: readonly string[]): boolean {
  const behind = lines.flatMap((line) => behindTime(line) ?? []);
  if (behind.filter((rest) => /^"?\s*[,;|\t]/.test(rest)).length >= behind.length / 2) return false;
  const rows = behind.map((rest) => splitCells(rest.trim(), blanks));
  const width = usualCount(rows.map((row) => row.length));
  const usual = rows.filter((row) => row.length === width);
  if (usual.length < rows.length / 2) return true;
  const hasNumbers = (place: number): boolean =>
    usual.filter((row) => /^[-+]?\d+(?:[.,]\d+)?$/.test(row[place]!)).length >= leastShare * usual.length;
  if (isHeader(lines, width)) return !usual[0]!.some((_, place) => hasNumbers(place));
  // Without names above them: a tag, its value, and perhaps its quality.
  return width > 3 || !hasNumbers(1) || new Set(usual.map((row) => row[0])).size < 2;
}

/** Whether above the lines stand as many names as they have cells, the time being one or two of them. */
function isHeader(lines: readonly string[], width: number): boolean {
  const first = lines.find((line) => line.trim() !== '') ?? '';
  const names = splitCells(first.trim(), blanks).length - width;
  return behindTime(first) === null && (names === 1 || names === 2);
}

function markup(file: string): LogProblem {
  return new LogProblem(
    'unknown-layout',
    { file },
    'This is a page or a document with markup (HTML or XML), whatever its name says, and no table of rows.',
    'If it is a log, open it in a spreadsheet and save it as .xlsx or CSV.',
  );
}

function withoutObjects(file: string): LogProblem {
  return new LogProblem(
    'unknown-layout',
    { file },
    'This is JSON, but no list of objects in which names stand beside values was found in it.',
    'If it is a log, export it as one object for each time or value, or as CSV.',
  );
}
