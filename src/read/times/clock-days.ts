import type { ClockDay } from '../../model/log-file.js';

/** Which day the rows of a file belong to that hold times of day only. Lines must be asked for in rising order, or nearly so. */
export class ClockDays {
  private at = 0;

  constructor(private readonly days: readonly ClockDay[]) {}

  /** Begin of the day of a line, as if it were UTC. */
  dayMs(line: number): number {
    while (this.at > 0 && this.days[this.at]!.line > line) this.at--;
    while (this.at + 1 < this.days.length && this.days[this.at + 1]!.line <= line) this.at++;
    return this.days[this.at]!.dayMs;
  }

  /** True for a line that holds a date and no row. */
  isDateLine(line: number): boolean {
    this.dayMs(line);
    const day = this.days[this.at]!;
    return day.line === line && day.isDateLine;
  }
}

const dayMs = 86_400_000;
/** A clock that goes back by so much has passed midnight, or the log stood still till the next day; less is disorder (own choice). */
export const dayPassedMs = 2 * 3_600_000;

/**
 * The day of a row behind another one, from their times of day alone: the next day where the clock goes back by more than
 * rows are out of order, the day before where a late row comes behind midnight.
 */
export function dayAfter(lastDayMs: number, lastClockMs: number, clockMs: number): number {
  if (clockMs - lastClockMs < -dayPassedMs) return lastDayMs + dayMs;
  return clockMs - lastClockMs > dayMs - dayPassedMs ? lastDayMs - dayMs : lastDayMs;
}

/** Labels of the moment of writing or of the end, where the rows do not begin (common practice). */
const notOfRows =
  /export|print|creat|generat|report|written|saved|version|calibrat|install|erstellt|druck|imprim|genere|stampa|creado|criado|gerado|utskrift|opprettet|^(?:to|until|bis|end|ende|stop|fin|fine|slut|koniec|konec)\b/i;
const labelled =
  /^[\s"'#*;,|\t-]*(?:([\p{L}][\p{L} ._/()-]{0,30}?)\s*[:=;,|\t ]+[\s:=;,|]*)?((?:\p{L}+\.?,?\s*)?\d.*?)[\s"';,|]*$/u;

/** What may be a date in a line that holds a date and at most a label before it; null for any other line. */
export function dateTextOf(line: string): string | null {
  if (line.length > 80 || !/\d/.test(line)) return null;
  const found = labelled.exec(line);
  return !found || notOfRows.test(found[1] ?? '') ? null : found[2]!;
}

/** What may be the date in the name of a file: with the year in front, or behind as people write it. */
export function dateInName(name: string): string | null {
  const base = name.split(/[\\/!]/).at(-1)!;
  const front = /(?<!\d)((?:19|20)\d{2})([-_.]?)(\d{2})\2(\d{2})(?!\d)/.exec(base);
  if (front) return `${front[1]}-${front[3]}-${front[4]}`;
  const behind = /(?<!\d)(\d{1,2})([-_.])(\d{1,2})\2((?:19|20)\d{2})(?!\d)/.exec(base);
  return behind && `${behind[1]}.${behind[3]}.${behind[4]}`;
}
