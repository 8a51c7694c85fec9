import type { LogFile } from '../../model/log-file.js';

/** Stands between machine and tag where a row names both; no text of a log holds it. */
const joint = '\u001f';

/** What a row of a long file is about: its tag, with the machine before it where that has a column of its own. */
export function rowTag(
  cells: readonly (string | number)[],
  tagColumn: number,
  machineColumn: LogFile['machineColumn'],
): string {
  const tag = String(cells[tagColumn] ?? '').trim();
  return machineColumn === undefined || tag === '' ? tag : `${String(cells[machineColumn] ?? '').trim()}${joint}${tag}`;
}

/** The machine that a row's tag begins with, and the tag itself; the machine is empty where the row names none. */
export function partsOfTag(text: string): { readonly machine: string; readonly tag: string } {
  const at = text.indexOf(joint);
  return at < 0 ? { machine: '', tag: text } : { machine: text.slice(0, at), tag: text.slice(at + 1) };
}
