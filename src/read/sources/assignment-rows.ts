import type { RowForm } from '../../model/log-file.js';
import { timeAtFront } from './message-rows.js';
import { readLines } from './text-source.js';
import { longLineText, type OnBadRow } from './records.js';
import { namesOf, recordRows, type NamedCells } from './record-rows.js';
import { inParts, type RowSource, type TableCell, type TablePart } from './table-part.js';

/** Lines like "2026-03-02 06:00:00 zone=Z1 pv=180.2 sp=180". */
type Assignments = Extract<RowForm, { kind: 'assignments' }>;

/** A name with its value: in quotes, or up to the next blank, comma, semicolon or bar. */
const assignment = /([\p{L}_][\p{L}\p{N}_./%-]*)\s?=\s?(?:"([^"]*)"|([^\s,;|\])}]*))/gu;
/** "Zone 1: PV=180.2": the values behind it are of the zone, up to the next such word. */
const label = /(?:^|[\s,;|\](])([\p{L}_][\p{L}\p{N}_ .-]{0,40}?)\s?:\s(?=\s*[\p{L}_][\p{L}\p{N}_./%-]*\s?=)/gu;
/** What stands before the first name is the time. */
const timeName = 'time';
/** So many of the lines are of this kind (own choice). */
const leastShare = 0.8;

/** Whether sampled lines are assignments: a time, and two names with values, one of them a number. */
export function areAssignments(lines: readonly string[]): boolean {
  const filled = lines.filter((line) => line.trim() !== '');
  const good = filled.filter((line) => {
    const cells = [...cellsOf(line).values()].map(String);
    return cells.length > 2 && cells.slice(1).some((cell) => /^[-+]?\d/.test(cell)) && /\d/.test(cells[0]!);
  });
  return filled.length > 0 && good.length >= leastShare * filled.length;
}

export async function assignmentsOf(source: RowSource): Promise<Assignments | null> {
  const names = await namesOf(recordsOf(source, () => undefined));
  return names.length === 0 ? null : { kind: 'assignments', names };
}

export function readAssignments(
  source: RowSource,
  { names }: Assignments,
  onBadRow: OnBadRow,
): AsyncGenerator<TablePart> {
  return inParts(recordRows(names, recordsOf(source, onBadRow)));
}

async function* recordsOf(source: RowSource, onBadRow: OnBadRow): AsyncGenerator<NamedCells> {
  const onLongLine = (line: Parameters<typeof longLineText>[0]): void =>
    onBadRow(line.number, 'long-line', longLineText(line, source.encoding));
  for await (const { number, text } of readLines(source, source.encoding, onLongLine))
    if (text.trim() !== '') yield { line: number, cells: cellsOf(text) };
}

function cellsOf(line: string): Map<string, TableCell> {
  const labels = [...line.matchAll(label)].map((match) => ({
    at: match.index,
    text: match[1]!,
    end: match.index + match[0].length,
  }));
  const found = [...line.matchAll(assignment)];
  const cells = new Map<string, TableCell>();
  const front = line
    .slice(0, Math.min(labels[0]?.at ?? Infinity, found[0]?.index ?? 0))
    .replace(/^[\s[(]+|[\s\]),;:|-]+$/g, '');
  // A level such as INFO may stand between the time and the first name.
  if (front !== '') cells.set(timeName, timeAtFront(`${front} `) ?? front);
  for (const match of found) {
    const group = labels.findLast(({ end }) => end <= match.index)?.text.trim();
    cells.set(group === undefined ? match[1]! : `${group} ${match[1]!}`, match[2] ?? match[3]!);
  }
  return cells;
}
