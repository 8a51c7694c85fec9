import { dateInName, dateTextOf } from './clock-days.js';
import { compileTime, detectTimeFormat, isTimeName, type TimeOptions } from './time-format.js';
import { parseClock, parseDateTime } from './time-text.js';
import type { CountStart } from './elapsed.js';

/** Labels of the moment at which the rows begin; common practice, several languages. */
const startLabel =
  /start|begin|debut|début|inizio|inicio|início|aanvang|poczatek|początek|začátek|zacatek|начал|开始|開始|시작|^\W*(?:from|von|du|dal|desde|vanaf|od)\b/iu;
const clockInName = /(?<=(?:19|20)\d{6}|\d{2}[-_.]\d{2})[-_ T]+(\d{2})[-_.h]?([0-5]\d)(?:[-_.m]?([0-5]\d))?(?!\d)/u;
const intervalLine =
  /(?:interval|sampl|scan|period|cycle|takt|intervall|abtast|intervalle|intervallo|intervalo|periode)[\p{L}. ()]*[:=;,\s]+(?:(\d+(?:[.,]\d+)?) *(ms|s|sec|secs|seconds?|sek|min|minutes?)\b|(\d{1,2}):(\d{2}):(\d{2}))/iu;

interface Moment {
  readonly label: string;
  readonly text: string;
}

/**
 * The moment from which a file counts its rows, from the lines above them, else from the file's name.
 *
 * @param preamble Lines above the header, cells parted by semicolons.
 * @param fileName Its path, or its entry in an archive.
 * @returns null where nothing says it, or more than one moment stands there and none is called the start. Never throws.
 */
export function startAbove(preamble: readonly string[], fileName: string, options: TimeOptions): CountStart | null {
  const moments = preamble.flatMap(labelled).flatMap(({ label, text }) => {
    const isDate = (['ymd', 'dmy', 'mdy'] as const).some((order) => parseDateTime(text, order) !== null);
    return isDate ? [{ label, text }] : [];
  });
  const named = moments.filter(({ label }) => startLabel.test(label));
  const found = named[0] ?? (moments.length === 1 ? moments[0]! : null);
  const start = found && startOf(found.text, 'stands above the rows', options);
  if (!start) return startInName(fileName, options);
  return start.hasClock ? start : withClock(start, preamble);
}

function labelled(line: string): Moment[] {
  const cells = line.split(/; |\t| {2,}/).filter((cell) => cell.trim() !== '');
  const pairs = cells.slice(1).map((cell, i) => `${cells[i]!}; ${cell}`);
  const texts = cells.length > 1 ? [...cells, ...pairs] : [line];
  return texts.flatMap((text) => {
    const behind = dateTextOf(text);
    return behind === null ? [] : [{ label: text.slice(0, text.lastIndexOf(behind)), text: behind }];
  });
}

function startOf(text: string, place: string, options: TimeOptions): CountStart | null {
  const format = detectTimeFormat([text], options);
  if (format?.kind !== 'date') return null;
  const time = parseDateTime(text, format.order)!;
  const { order, isUndecided, why } = format;
  const told = order === 'ymd' ? place : `${place} (${why})`;
  return { ms: compileTime(format)(text), hasClock: time.clockStart < text.length, order, isUndecided, place: told };
}

/** "Start date" and "Start time" in lines of their own. */
function withClock(start: CountStart, preamble: readonly string[]): CountStart {
  for (const { label, text } of preamble.flatMap(labelled)) {
    const clock = startLabel.test(label) || isTimeName(label) ? parseClock(text) : null;
    if (clock) return { ...start, ms: start.ms + clock.ms, hasClock: true };
  }
  return start;
}

function startInName(fileName: string, options: TimeOptions): CountStart | null {
  const date = dateInName(fileName);
  const [, hour, minute, second = '00'] = clockInName.exec(fileName.split(/[\\/!]/).at(-1)!) ?? [];
  const clock = hour === undefined ? '' : ` ${hour}:${minute}:${second}`;
  return date === null ? null : startOf(`${date}${clock}`, "stands in the file's name", options);
}

const intervalUnits: readonly (readonly [RegExp, number])[] = [
  [/^ms$/i, 1],
  [/^s/i, 1000],
  [/^min/i, 60_000],
];

/** How long one row is behind the next, as a line above them says it; NaN = none does. Never throws. */
export function intervalAbove(preamble: readonly string[]): number {
  for (const line of preamble) {
    const [, count, unit, hours, minutes, seconds] = intervalLine.exec(line) ?? [];
    if (count !== undefined)
      return Number(count.replace(',', '.')) * intervalUnits.find(([pattern]) => pattern.test(unit!))![1];
    if (hours !== undefined) return ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1000;
  }
  return NaN;
}
