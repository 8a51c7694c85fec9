import type { RowForm } from '../../model/log-file.js';
import { LogProblem } from '../../model/problem.js';
import { areAssignments, assignmentsOf } from '../sources/assignment-rows.js';
import { areMessages, behindTime } from '../sources/message-rows.js';
import { decodeBytes } from '../sources/encoding.js';
import { jsonPlaceOf } from '../sources/json-place.js';
import { jsonFormOf } from '../sources/json-rows.js';
import type { RowSource } from '../sources/table-part.js';
import type { TextHead } from '../sources/text-source.js';

/** Lines of the beginning that show whether names stand beside the values in each (own choice). */
const linesLookedAt = 60;

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

/** No mark of a table stands behind most times: else the lines are cut into cells, whatever stands above them. */
function isUncut(lines: readonly string[]): boolean {
  const behind = lines.flatMap((line) => behindTime(line) ?? []);
  return behind.filter((rest) => /^"?\s*[,;|\t]/.test(rest)).length < behind.length / 2;
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
