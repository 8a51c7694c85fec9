import { cellOf, type Cells } from './event-columns.js';
import type { EventColumns } from './event-table.js';
import { eventState, type EventState } from './state-words.js';

/** So many of the rows that begin an alarm must bear one number, and so many of a number's rows must end one (own choice). */
const mostOf = 0.8;
/** What a legend writes between a number and its word. */
const legendEntry = /(?<![\d.:/-])(\d)\s*[=:;,|\t–-]\s*(\p{L}[\p{L} ]*)/gu;

/**
 * What the numbers of a state column stand for: as a legend above the header says, else from their order. The number
 * with which alarms begin is come, the one before they begin anew is gone, what stands between is acknowledged.
 *
 * @param rows Sample rows, in the order of the file.
 * @param legend Lines above the header.
 * @returns null where the column holds words or only 1 and 0, or where no order shows. Never throws.
 */
export function stateNumbers(
  columns: EventColumns,
  rows: readonly Cells[],
  legend: readonly string[],
): ReadonlyMap<string, EventState> | null {
  const { state, source, zone, machine, code, message } = columns;
  const cells = rows.map((row) => cellOf(row, state)).filter((cell) => cell !== '');
  const numbers = [...new Set(cells)];
  if (state === undefined || !numbers.every((cell) => /^\d$/.test(cell))) return null;
  if (numbers.every((cell) => cell === '0' || cell === '1')) return null;
  const said = saidBy(legend);
  if (numbers.every((number) => said.has(number))) return said;
  const courses = new Map<string, string[]>();
  for (const row of rows) {
    const cell = cellOf(row, state);
    const alarm = [source, zone, machine, code, message].map((column) => cellOf(row, column)).join('\0');
    if (cell !== '') courses.set(alarm, [...(courses.get(alarm) ?? []), cell]);
  }
  return fromCourses([...courses.values()], numbers);
}

function saidBy(legend: readonly string[]): Map<string, EventState> {
  const said = new Map<string, EventState>();
  for (const line of legend)
    for (const [, number, words] of line.matchAll(legendEntry)) {
      const text = words!.trim();
      const state = /return|cleared|normal|gone|gegangen|rtn/i.test(text) ? 'cleared' : eventState(text);
      if (state) said.set(number!, state);
    }
  return said;
}

function fromCourses(courses: readonly (readonly string[])[], numbers: readonly string[]) {
  const firsts = courses.map((course) => course[0]!);
  const come = numbers.reduce((a, b) => (countOf(firsts, b) > countOf(firsts, a) ? b : a));
  if (countOf(firsts, come) < mostOf * firsts.length) return null;
  const states = new Map<string, EventState>();
  for (const number of numbers) {
    const next = courses.flatMap((course) =>
      course.flatMap((cell, i) => (cell === number ? [course[i + 1] ?? come] : [])),
    );
    const isLast = countOf(next, come) >= mostOf * next.length;
    states.set(number, number === come ? 'active' : isLast ? 'cleared' : 'acknowledged');
  }
  return [...states.values()].includes('cleared') ? states : null;
}

function countOf(cells: readonly string[], number: string): number {
  return cells.filter((cell) => cell === number).length;
}
