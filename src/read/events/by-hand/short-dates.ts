import { DAY_MS } from '../../../model/time-units.js';
import { monthOfName } from '../../times/month-names.js';
import { rolesOfName } from '../recognise.js';
import { areMost, filledCells, type LogDays, type MendFinder } from './mend.js';

const weekday = String.raw`(?:\p{L}{2,}[.,]*\s+)?`;
/** "2.3.", "Mon 2/3", "02-03." with a clock behind it or none. */
const numbers = new RegExp(String.raw`^(${weekday})(\d{1,2})([./-])\s?(\d{1,2})(\.?)(?=$|,?\s+\d{1,2}[:.hH])`, 'u');
/** "2 mars", "Mon 2nd March", "2. März". */
const dayName = new RegExp(
  String.raw`^${weekday}(\d{1,2})(?:st|nd|rd|th|er|º)?\.?[\s-]+(?:de\s+)?(\p{L}{3,}\.?)(?=$|,?\s+\d{1,2}[:.hH])`,
  'u',
);
/** "March 2", "Mar 2nd". */
const nameDay = new RegExp(
  String.raw`^${weekday}(\p{L}{3,}\.?)\s+(\d{1,2})(?:st|nd|rd|th)?(?=$|,?\s+\d{1,2}[:.hH])`,
  'u',
);

const year = /(?<!\d)(?:19|20)\d{2}(?!\d)/u;

/** Dates without a year, in a column whose name says that it holds times: the year is that of the log. */
export const shortDates: MendFinder = ({ header, rows, log }) => {
  const columns = header.flatMap((name, column) => {
    const { whole, part } = rolesOfName(name);
    const isNamed = [...whole, ...part].some((role) => role === 'time' || role === 'start' || role === 'end');
    const cells = filledCells(rows, column);
    const isShort = cells.filter((cell) => withYear(cell, log) !== null);
    if (!isNamed || isShort.length === 0) return [];
    // "2.3" alone may be a clock or a number: some of the column must be more than that.
    const isSure = isShort.some((cell) => !/^\d{1,2}\.\d{1,2}$/u.test(cell));
    return isSure && areMost(cells, (cell) => withYear(cell, log) !== null || year.test(cell)) ? [column] : [];
  });
  if (columns.length === 0) return null;
  const begin = () => (cells: readonly string[]) =>
    cells.map((cell, i) => (columns.includes(i) ? (withYear(cell.trim(), log) ?? cell) : cell));
  return { header, note: 'dates without a year are taken as of the year of the temperature log', begin };
};

function withYear(cell: string, log: LogDays): string | null {
  if (year.test(cell)) return null;
  const plain = numbers.exec(cell);
  if (plain) {
    const [text, lead, first, mark, second] = plain;
    const [a, b] = [Number(first), Number(second)];
    const ofYear = b <= 12 ? yearNear(log, b, a) : a <= 12 ? yearNear(log, a, b) : NaN;
    return Number.isNaN(ofYear)
      ? null
      : `${lead!}${first!}${mark!}${second!}${mark!}${ofYear}${cell.slice(text.length)}`;
  }
  const byDay = dayName.exec(cell);
  const byName = byDay ? null : nameDay.exec(cell);
  const found = byDay ?? byName;
  if (!found) return null;
  const [day, name] = byDay ? [found[1]!, found[2]!] : [found[2]!, found[1]!];
  const ofYear = yearNear(log, monthOfName(name), Number(day));
  return Number.isNaN(ofYear) ? null : `${day} ${name} ${ofYear}${cell.slice(found[0].length)}`;
}

/**
 * The year in which a day lies nearest to the log; where no log is known, one that has every day. NaN = no such day, or a log
 * that holds it more than once.
 */
function yearNear({ startMs, endMs }: LogDays, month: number, day: number): number {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31)) return NaN;
  if (Number.isNaN(startMs)) return 2000;
  const [first, last] = [startMs, endMs].map((ms) => new Date(ms).getUTCFullYear());
  const years = Array.from({ length: last! - first! + 3 }, (_, i) => first! - 1 + i);
  const away = (of: number): number => {
    const ms = Date.UTC(of, month - 1, day);
    return Math.max(0, startMs - DAY_MS - ms, ms - endMs);
  };
  if (years.filter((it) => away(it) === 0).length > 1) return NaN;
  return years.reduce((best, it) => (away(it) < away(best) ? it : best));
}
