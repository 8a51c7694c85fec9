import type { TimeFormat } from '../../model/log-file.js';
import { foldText } from '../../words/fold.js';
import { isRising } from './rising.js';
import { timeUnitOf } from './time-unit.js';

/** The moment from which a file counts its rows. */
export interface CountStart {
  /** As the clock shows it, counted as if it were UTC. */
  readonly ms: number;
  /** False where only the day is said; ms is then its midnight. */
  readonly hasClock: boolean;
  readonly order: TimeFormat['order'];
  readonly isUndecided: boolean;
  /** Where it was found, in words. */
  readonly place: string;
}

/** What stands around the cells of a count. */
export interface CountContext {
  /** null = nothing says it. */
  readonly start: CountStart | null;
  /** Time between two rows, for a column that numbers them; NaN = not said. */
  readonly intervalMs: number;
}

/** A count beyond a century is no time since a start (common practice). */
const longestMs = 100 * 366 * 86_400_000;
const dayMs = 86_400_000;

/** Names of a time since a start; common practice, several languages. */
const elapsedName =
  /elapsed|relative|since|run ?time|test ?time|duration|laufzeit|verstrichen|versuchszeit|ecoule|trascorso|transcurrido|decorrido|verlopen|forlopt|forlupen|h+ ?: ?mm/;
const rowNumberName =
  /^\W*(?:no|nr|n|number|nummer|numero|num|index|idx|sample|scan|record|row|point|messung|zeile|lfd|#)\b|^#/;

/** Times in the Romance languages; "temps" stands above temperatures as often, so a unit of time must be beside it. */
const timeWithUnit = /^\W*(?:temps|tempo|tiempo|timp)\b/;
/** Such a word needs no start to be understood. */
const wholeWord = /^\p{L}{4,}$/u;

/** Whole hours, minutes and seconds, perhaps behind days: "26:00:10", "1.02:00:10", "1d 02:00:10". */
const spanCell = /^(?:(\d{1,4})(?:d|[. ]) *)?(\d{1,5}):([0-5]?\d):([0-5]\d(?:[.,]\d+)?)$/;

/** Seconds that a cell such as "26:00:10" counts; NaN for any other. Never throws. */
export function secondsOfSpan(cell: string): number {
  const [, days = '0', hours, minutes, seconds] = spanCell.exec(cell) ?? [];
  if (seconds === undefined) return NaN;
  return ((Number(days) * 24 + Number(hours)) * 60 + Number(minutes)) * 60 + Number(seconds.replace(',', '.'));
}

/**
 * Tells how cells count the time since a start: as numbers in a column that is called time, as hours, minutes and seconds
 * where the name, a count beyond a day or the start shows that they are no time of day, or as numbers of rows whose
 * interval is said above.
 *
 * @param cells As they stand; `numbers` the same as numbers, NaN for what is none.
 * @returns null when they do not. `startMs` is absent where no start is known. Never throws.
 */
export function detectElapsed(
  cells: readonly string[],
  numbers: readonly number[],
  columnName: string,
  isTimeName: boolean,
  { start, intervalMs }: CountContext,
): TimeFormat | null {
  const name = foldText(columnName);
  const spans = cells.map(secondsOfSpan).filter((seconds) => !Number.isNaN(seconds));
  if (spans.length >= 0.8 * cells.length)
    return spans.length > 2 && isRising(spans) && isNoClock(spans, name, start)
      ? counted(1000, 'h:mm:ss', 0, start)
      : null;
  const counts = numbers.filter((number) => Number.isFinite(number));
  if (counts.length < 3 || !isRising(counts)) return null;
  const said = timeUnitOf(columnName);
  const isAlone = said?.word === name && (start !== null || wholeWord.test(name));
  if (!isTimeName && !isAlone && !(said && (timeWithUnit.test(name) || elapsedName.test(name)))) {
    const isNumbered = start !== null && intervalMs > 0 && rowNumberName.test(name) && counts.every(Number.isInteger);
    return isNumbered ? counted(intervalMs, `rows of ${intervalMs / 1000} s, numbered`, counts[0]!, start) : null;
  }
  const { word, ms: unitMs } = said ?? { word: 's', ms: 1000 };
  return counts.some((count) => count * unitMs > longestMs) ? null : counted(unitMs, word, 0, start);
}

/** The first row comes with the start, or an interval of a logger behind it (common practice: at most ten minutes). */
const firstRowWithinS = 600;

/** A time of day is not called elapsed, ends at midnight, and does not lie before the start of its own log. */
function isNoClock(spans: readonly number[], name: string, start: CountStart | null): boolean {
  const isBeforeStart =
    start !== null && start.hasClock && spans[0]! <= firstRowWithinS && spans[0]! * 1000 < start.ms % dayMs;
  return elapsedName.test(name) || spans.some((seconds) => seconds * 1000 > dayMs) || isBeforeStart;
}

/** @param first The count that stands for the start itself. */
function counted(unitMs: number, unit: string, first: number, start: CountStart | null): TimeFormat {
  const base = { kind: 'elapsed' as const, unitMs, isAbsolute: false };
  if (!start) return { ...base, order: 'ymd', isUndecided: false, why: `${unit} since a start that nothing says` };
  const { ms, order, isUndecided, place, hasClock } = start;
  const why = `${unit} since the start, which ${place}${hasClock ? '' : ' without a clock: midnight is taken'}`;
  return { ...base, order, isUndecided, startMs: ms - first * unitMs, why };
}
