import type { RowForm } from '../../model/log-file.js';
import { cutObjects } from './json-objects.js';
import { longLineText, type OnBadRow } from './records.js';
import { namesOf, recordRows, type NamedCells } from './record-rows.js';
import { inParts, type RowSource, type TableCell, type TablePart } from './table-part.js';
import { readLines } from './text-source.js';

type JsonForm = Extract<RowForm, { kind: 'json' }>;
/** Where objects stand in a text of JSON (RFC 8259). */
export type JsonPlace = Pick<JsonForm, 'depth' | 'isByLine'>;

/** @returns null where the objects give no names, or more than a log has. Throws LogProblem. */
export async function jsonFormOf(source: RowSource, place: JsonPlace): Promise<JsonForm | null> {
  const names = await namesOf(recordsOf(source, place, () => undefined));
  return names.length === 0 ? null : { kind: 'json', ...place, names };
}

export function readJson(source: RowSource, form: JsonForm, onBadRow: OnBadRow): AsyncGenerator<TablePart> {
  return inParts(recordRows(form.names, recordsOf(source, form, onBadRow)));
}

async function* recordsOf(source: RowSource, place: JsonPlace, onBadRow: OnBadRow): AsyncGenerator<NamedCells> {
  const texts = place.isByLine ? linesOf(source, onBadRow) : cutObjects(source, place.depth, onBadRow);
  for await (const { line, text } of texts) {
    const object = objectOf(text);
    if (object === null) onBadRow(line, 'bad-json', text);
    else for (const cells of rowsOf(object)) yield { line, cells };
  }
}

/** Lines that hold an object each; the brackets and commas of an array that is written so do not count. */
async function* linesOf(source: RowSource, onBadRow: OnBadRow): AsyncGenerator<{ line: number; text: string }> {
  const onLongLine = (line: Parameters<typeof longLineText>[0]): void =>
    onBadRow(line.number, 'long-line', longLineText(line, source.encoding));
  for await (const { number, text } of readLines(source, source.encoding, onLongLine)) {
    const bare = bareLine(text);
    if (bare !== '') yield { line: number, text: bare };
  }
}

/** A line without what an array puts around its objects. */
export function bareLine(line: string): string {
  return line
    .trim()
    .replace(/^\[(?=\s*(?:\{|$))|(?<=\})\s*\]$|^\]$/g, '')
    .trim()
    .replace(/,$/, '');
}

/** The object that a text is; null for anything else. Never throws. */
export function objectOf(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}

/** Names of objects that only hold the values together (common practice). */
const mereContainer =
  /^(?:values?|data|fields?|tags?|payload|readings?|measurements?|samples?|points?|attributes|metrics|record|row|zones|channels|loops|sensors|temperatures)$/i;

/**
 * The rows of one object: values of objects within it are named by both names; every object of an array within it makes
 * a row of its own, with what stands beside the array.
 */
function rowsOf(object: object, depth = 0): Map<string, TableCell>[] {
  const cells = new Map<string, TableCell>();
  const lists: (readonly object[])[] = [];
  gather(object, '', cells, lists, depth);
  if (lists.length === 0) return [cells];
  return lists.flat().flatMap((inner) => rowsOf(inner, depth + 1).map((own) => new Map([...cells, ...own])));
}

/** Values that lie deeper are no columns of a log (own choice). */
const deepest = 12;

function gather(
  object: object,
  above: string,
  cells: Map<string, TableCell>,
  lists: (readonly object[])[],
  depth: number,
): void {
  if (depth > deepest) return;
  for (const [key, value] of Object.entries(object) as [string, unknown][]) {
    const name = above === '' ? key : `${above} ${key}`;
    if (
      Array.isArray(value) &&
      value.length > 0 &&
      value.every((it) => typeof it === 'object' && it !== null && !Array.isArray(it))
    )
      lists.push(value as object[]);
    else if (typeof value === 'object' && value !== null)
      gather(value, mereContainer.test(key) ? above : name, cells, lists, depth + 1);
    else cells.set(name, typeof value === 'number' ? value : value === null ? '' : String(value));
  }
}
