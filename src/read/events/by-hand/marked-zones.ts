import { rolesOfName } from '../recognise.js';
import { filledCells, type MendFinder } from './mend.js';

const mark = /^(?:x|xx|✓|✔|✗|•|●|\*|ja|yes|oui|si|sí|sim|tak)$/iu;

/** A column for each zone with a cross where a row is about it: the names of the crossed columns become one cell. */
export const markedZones: MendFinder = ({ header, rows }) => {
  const marked = header.flatMap((name, column) => {
    const cells = filledCells(rows, column);
    const { whole, part } = rolesOfName(name);
    const isOther = [...whole, ...part].some((role) => role !== 'zone');
    return name.trim() !== '' && !isOther && cells.length > 0 && cells.every((cell) => mark.test(cell)) ? [column] : [];
  });
  if (marked.length < 2) return null;
  const begin = () => (cells: readonly string[]) => {
    const names = marked.flatMap((column) => ((cells[column] ?? '').trim() === '' ? [] : [header[column]!.trim()]));
    const others = header.map((_, column) => (marked.includes(column) ? '' : (cells[column] ?? '')));
    return [...others, names.join(' + ')];
  };
  return { header: [...header, 'Zone'], note: 'zones are those whose column is marked', begin };
};
