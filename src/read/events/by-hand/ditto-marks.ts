import { list, foldText } from '../../../words/fold.js';
import type { Cells, MendFinder } from './mend.js';

/** What stands for the cell above, as a mark or in words. From memory. */
const marks = new Set(['"', "''", '″', '〃', '”', '“', '„', '« »', '-"-', '- " -', '–"–', '– " –', ',,', '."', '".']);
const words = new Set(
  list(`ditto, dito, idem, same, same as above, as above, s.o., s. o., wie oben, siehe oben, dasselbe, comme ci-dessus,
    comme au-dessus, c.s., come sopra, igual, igual que arriba, lo mismo, idem acima, mesmo, id., zelfde, hetzelfde, zie boven,
    jw., j.w., jak wyzej, to samo, som over, som ovenfor, samme, samma, samma som ovan, 同上`),
);

/** Ditto marks and "same as above": the cell above holds. */
export const dittoMarks: MendFinder = ({ header, rows }) => {
  if (!rows.some((cells) => cells.some(isDitto))) return null;
  const begin = () => {
    let above: Cells = [];
    return (cells: Cells): Cells => {
      const own = cells.map((cell, i) => (isDitto(cell) ? (above[i] ?? '') : cell));
      if (own.some((cell) => cell.trim() !== '')) above = own;
      return own;
    };
  };
  return { header, note: 'ditto marks and "same as above" hold what stands above them', begin };
};

function isDitto(cell: string): boolean {
  const trimmed = cell.trim();
  if (trimmed === '' || trimmed.length > 24) return false;
  return marks.has(trimmed) || words.has(foldText(trimmed));
}
