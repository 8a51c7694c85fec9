import { foldText } from '../../../words/fold.js';
import type { Cells, Mend, MendFinder } from './mend.js';

/** What spreadsheets show where a formula fails (Office Open XML, ECMA-376 part 1, 18.17.3; other languages from memory). */
const formulaError =
  /^#(?:ref!|value!|n\/a|name\?|div\/0!|num!|null!|bezug!|wert!|nv|zahl!|valeur!|nom\?|n\/d|nombre!|nome\?|rif!|valore!|¡valor!|valor!|¡ref!|arg!|adr!|verw!|waarde!)$/iu;
/** What people write in front of a time that they did not look up. From memory. */
const about =
  /^(?:~|≈|ca\.?|circa|approx\.?|about|around|etwa|ungefahr|gegen|vers|env\.?|environ|ongeveer|omkring|ok\.|okolo|aprox\.?|hacia|verso)\s*(?=\d{1,2}\s?(?:[:.h]|uhr))/u;

/** Marks of a spreadsheet and "about": an apostrophe in front of what shall stay text, errors of formulas, "ca. 06:30". */
export const oddCells: MendFinder = ({ header, rows }) => {
  const isNeeded = rows.some((cells) => cells.some((cell) => plainCell(cell) !== cell));
  return isNeeded ? mend(header) : null;
};

function mend(header: Cells): Mend {
  const note = 'cells without the apostrophe in front, "about" and errors of formulas';
  return { header, note, begin: () => (cells) => cells.map(plainCell) };
}

function plainCell(cell: string): string {
  const trimmed = cell.trim();
  if (/^'[^']+$/u.test(trimmed)) return plainCell(trimmed.slice(1));
  if (trimmed.startsWith('#')) return formulaError.test(trimmed) ? '' : cell;
  const folded = foldText(trimmed);
  const lead = about.exec(folded)?.[0].length ?? 0;
  return lead > 0 && folded.length === trimmed.length ? trimmed.slice(lead) : cell;
}
