import { foldText, list } from '../../../words/fold.js';
import { weekdaysOf } from '../../../words/weekdays.js';
import { parseDateTime } from '../../times/time-text.js';
import { areMost, filledCells, type Cells, type LogDays, type MendFinder } from './mend.js';

/** Names of a column of weeks. From memory. */
const weekNames = new Set(
  list(`kw, woche, kalenderwoche, week, wk, calendar week, week no, semaine, sem, semana, settimana, sett, uge, uke, vecka, v,
    tydzien, tyden, tydz, viikko, vko, w, weeknr, week nr`),
);
const week = /^\p{L}{0,6}\.?\s?(\d{1,2})$/u;

/** A week of the year and a day of the week beside each other (ISO 8601), in place of a date: the year is that of the log. */
export const weekDays: MendFinder = ({ header, rows, log }) => {
  const ofWeeks = header.findIndex((name) =>
    weekNames.has(
      foldText(name)
        .replace(/[^\p{L} ]/gu, '')
        .trim(),
    ),
  );
  const ofDays = header.findIndex((_, column) =>
    areMost(filledCells(rows, column), (cell) => dayNumber(cell) !== null),
  );
  if (ofWeeks < 0 || ofDays < 0 || !areMost(filledCells(rows, ofWeeks), (cell) => week.test(cell))) return null;
  const begin = () => {
    let [lastWeek, lastDay] = ['', ''];
    return (cells: Cells): Cells => {
      lastWeek = (cells[ofWeeks] ?? '').trim() || lastWeek;
      lastDay = (cells[ofDays] ?? '').trim() || lastDay;
      const date = dateOf(Number(week.exec(lastWeek)?.[1]), dayNumber(lastDay), log);
      return date === null || cells.every((cell) => cell.trim() === '') ? cells : cells.with(ofDays, date);
    };
  };
  const note = 'dates are taken from week and day, and the year from the temperature log';
  return { header: header.with(ofDays, 'Date'), note, begin };
};

function dayNumber(cell: string): number | null {
  const days = /\p{L}{2}/u.test(cell) ? weekdaysOf(cell.replace(/\.$/u, '')) : null;
  return days?.length === 1 ? days[0]! : null;
}

/** "2026-03-02" for day 1 of week 10, in the year in which it lies nearest to the log; null where there is none or more than one. */
function dateOf(number: number, day: number | null, { startMs, endMs }: LogDays): string | null {
  if (day === null || !(number >= 1 && number <= 53)) return null;
  const [first, last] = Number.isNaN(startMs)
    ? [2000, 2000]
    : [startMs, endMs].map((ms) => new Date(ms).getUTCFullYear());
  const days = Array.from({ length: last! - first! + 3 }, (_, i) => first! - 1 + i).flatMap((year) => {
    const ms = parseDateTime(`${year}-W${String(number).padStart(2, '0')}-${day}`, 'ymd')?.ms;
    return ms === undefined ? [] : [{ ms, awayMs: Math.max(0, startMs - ms, ms - endMs) }];
  });
  if (days.filter(({ awayMs }) => awayMs === 0).length > 1) return null;
  const nearest = days.toSorted((a, b) => a.awayMs - b.awayMs)[0];
  return nearest ? new Date(nearest.ms).toISOString().slice(0, 10) : null;
}
