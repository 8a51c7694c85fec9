import { rolesOfName } from '../recognise.js';
import { areMost, filledCells, type Cells, type MendFinder } from './mend.js';

const clock = String.raw`\d{1,2}[:.hH]\d{2}(?:\s?[ap]\.?m\.?)?|\d{1,2}\s?h|\d{1,2}\s?[ap]m|\d{4}`;
const until = String.raw`-|–|—|→|>|to|till?|until|bis|à|a|al|alle|tot|do|hasta|até|ate|e`;
const from = String.raw`(?:from|von|de|ab|fra|från|od|om|um|at|desde|dalle|das|kl\.?)\s+`;
const unit = String.raw`(?:h|std|min|mins|minutes?|minuten|minuti|minutos|minuter|minutter|m|['’′])`;
const parts = String.raw`^(.*?)(?:${from})?`;
/** "06:30-06:50", "from 6:30 to 6:50", with a date in front or none. */
const ended = new RegExp(
  String.raw`${parts}(?<![\d:.])(${clock})\s*(?:uhr)?\s*(?:${until})\s*(${clock})\s*(?:uhr)?$`,
  'iu',
);
/** "from 6:30 for 20 min", "6:30 (20 min)". */
const lasting = new RegExp(
  String.raw`${parts}(?<![\d:.])(${clock})\s*(?:uhr)?\s*(?:for|für|pendant|per|durante|gedurende|i|przez|,|;|\+|\()?\s*(\d+(?:[.,]\d+)?\s*${unit}\.?)\)?$`,
  'iu',
);

/** Begin and end, or begin and length, in one cell: the end and the length get columns of their own. */
export const spansInCells: MendFinder = ({ header, rows }) => {
  const roles = header.map((name) => rolesOfName(name));
  if (roles.some(({ whole }) => whole.includes('end'))) return null;
  const column = header.findIndex((_, c) => areMost(filledCells(rows, c), (cell) => spanOf(cell) !== null));
  if (column < 0) return null;
  const names = header.with(column, 'Start');
  const begin = () => (cells: Cells) => {
    const span = spanOf((cells[column] ?? '').trim());
    const own = header.map((_, c) => (c === column && span ? span.start : (cells[c] ?? '')));
    return [...own, span?.end ?? '', span?.length ?? ''];
  };
  const note = `begin and end, or begin and length, stand in one cell of "${header[column]!}"`;
  return { header: [...names, 'End', 'Duration'], note, begin };
};

function spanOf(cell: string): { readonly start: string; readonly end: string; readonly length: string } | null {
  const withLength = lasting.exec(cell);
  const found = withLength ?? ended.exec(cell);
  if (!found || /\p{L}{4}/u.test(found[1]!)) return null;
  const start = `${found[1]!}${plainClock(found[2]!)}`;
  return withLength ? { start, end: '', length: found[3]! } : { start, end: plainClock(found[3]!), length: '' };
}

function plainClock(text: string): string {
  const whole = /^(\d{1,2})\s?h$/iu.exec(text);
  if (whole) return `${whole[1]!}:00`;
  return text.replace(/^(\d{2})(\d{2})$/u, '$1:$2').replace(/^(\d{1,2})[.hH](\d{2})/u, '$1:$2');
}
