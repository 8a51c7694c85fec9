import type { LogFile } from '../../model/log-file.js';
import type { EventFileKind } from '../events/event-table.js';
import { namesDetail, recogniseEvents } from '../events/recognise.js';
import type { ColumnFacts } from './column-facts.js';
import type { FileShape } from './file-shape.js';
import { haveMeasures, sayRoles } from './long-columns.js';
import { saysAlarm } from '../names/flag-names.js';
import { plainWords } from '../names/role-words.js';
import { columnsOfTime, timeCell } from '../times/time-cell.js';
import { compileTime } from '../times/time-format.js';
import { parseDateTime } from '../times/time-text.js';

/** Words by which lists of events tell themselves, without accents (common practice, several languages). */
const alarmWords =
  /\b(alarms?|alarm text|message|event|severity|priority|ack(nowledged)?|acknowledge|active|condition|meldung|stormeldung|storung|ereignis|prioritat|quittiert|alarme|defaut|evenement|message d ?erreur|alarma|evento|mensaje|allarme|messaggio|melding|prioriteit|hendelse|larm|state|type|description|beschreibung|text)\b/;
const strongAlarmWords =
  /\b(alarms?|alarmy|stormeldung|alarme|alarma|allarme|larm(?:text|lista)?|severity|priority|ack(nowledged)?)\b/;
const maintenanceWords =
  /\b(work ?order|maintenance|repair|replaced|work done|done|action|found|finding|technician|wartung|instandhaltung|massnahme|befund|techniker|arbeit|intervention|travail|mantenimiento|trabajo|tecnico|manutenzione|intervento|onderhoud|vedlikehold|utfort|tekniker|underhall)\b/;
const stopWords =
  /\b(stops?|stop reason|downtime|down time|reason|planned|stillstand|grund|ausfall|arret|cause d ?arret|motif|parada|motivo|fermo|causale|stilstand|reden|stopp|arsak|stans|stillstande|stillstands(?:liste|zeiten)|stoppages|paradas|paros|fermate|fermi|stilstanden|arrets|przestoje|prostoje|stopp(?:lista|liste|logg))\b/;

/**
 * Tells lists of events from logs of numbers by the words of header and file name and by what the columns hold.
 *
 * @returns The kind, and why in a few words.
 */
export function kindOf(shape: FileShape, fileName: string): Pick<LogFile, 'kind' | 'why'> {
  if (shape.layout === 'long' && sayRoles(shape.rows, shape.tagColumn) && haveMeasures(shape, shape))
    return { kind: 'temperature', why: 'times with tags that say reading, set point or output' };
  if (isOfFlags(shape)) return { kind: 'temperature', why: 'times with alarm flags beside them' };
  const called = calledBy(fileName);
  const events = certainEvents(shape, called === 'stops' ? called : null);
  if (events) return events;
  const header = shape.hasHeader ? shape.header.map(plainWords).join(' | ') : '';
  const texts = shape.columns.filter(
    (facts) => facts.filled > 0 && facts.numbers < 0.3 * facts.filled && facts.runningWords < facts.filled,
  ).length;
  if (isNumbersLog(shape, texts)) return { kind: 'temperature', why: 'times with numbers beside them' };
  if (maintenanceWords.test(header) || called === 'maintenance')
    return { kind: 'maintenance', why: 'a list of work done' };
  if (strongAlarmWords.test(header) || called === 'alarm') return { kind: 'alarm', why: 'a list of alarms' };
  if (stopWords.test(header) || called === 'stops') return { kind: 'stops', why: 'a list of stops' };
  if (alarmWords.test(header) || texts >= 2) return { kind: 'alarm', why: 'times with texts beside them' };
  return { kind: 'other', why: 'it has times, but neither readings nor texts that this program knows' };
}

/** What the name of a file says that it lists; null = nothing. */
export function calledBy(fileName: string): EventFileKind | null {
  const name = plainWords(fileName.replace(/.*[\\/]/, '').replace(/\.\w+$/, ''));
  if (maintenanceWords.test(name)) return 'maintenance';
  if (strongAlarmWords.test(name)) return 'alarm';
  return stopWords.test(name) ? 'stops' : null;
}

/** A column for each flag and nothing else; a list of alarms has texts. */
function isOfFlags(shape: FileShape): boolean {
  const { layout, hasHeader, header, columns } = shape;
  if (layout !== 'wide' || !hasHeader) return false;
  const times = columnsOfTime(shape);
  const others = header.flatMap((name, i) => (times.has(i) ? [] : [{ name, ...columns[i]! }]));
  return (
    others.every(({ name, flags, filled }) => saysAlarm(name) > 0 && flags === filled) &&
    others.some(({ name, filled }) => saysAlarm(name) === 2 && filled > 0)
  );
}

/** States that come and go, or starts with ends or durations, beside texts: no log of numbers has them. */
function certainEvents(shape: FileShape, called: 'stops' | null): Pick<LogFile, 'kind' | 'why'> | null {
  const { hasHeader, header, rows, columns } = shape;
  // Several columns of quality stand beside several columns of values.
  if (columns.filter(({ isQuality }) => isQuality).length > 1) return null;
  if (columns.length > MOST_EVENT_COLUMNS && holdsOnlyNumbers(shape)) return null;
  const cells = rows.slice(0, 200).map((row) => row.cells);
  const found = recogniseEvents(hasHeader ? header : [], cells, called);
  if (!found) return null;
  const { state, end, duration, message, done } = found.columns;
  const work = done ?? message;
  if (found.kind === 'maintenance' && work !== undefined && isOfWords(shape, work))
    return { kind: 'maintenance', why: 'a list of work done' };
  if (found.kind === 'alarm' && message !== undefined && (state ?? end ?? duration) !== undefined)
    return { kind: 'alarm', why: 'a list of alarms' };
  if (found.kind === 'stops') return { kind: 'stops', why: 'a list of stops' };
  return null;
}

/** Words in nearly every row of a column, and at most one column of numbers, such as those of the orders. */
function isOfWords(shape: FileShape, column: number): boolean {
  const times = columnsOfTime(shape);
  const { filled, numbers, distinct } = shape.columns[column]!;
  const numeric = shape.columns.filter(
    (facts, i) => !times.has(i) && facts.filled > 0 && facts.numbers === facts.filled,
  );
  return filled >= 0.8 * shape.rows.length && numbers === 0 && distinct > 1 && numeric.length <= 1;
}

/** A list of events without a word in it has a start, an end and a few codes (own choice). */
const MOST_EVENT_COLUMNS = 8;

function holdsOnlyNumbers(shape: FileShape): boolean {
  const times = columnsOfTime(shape);
  return shape.columns.every((facts, i) => times.has(i) || facts.numbers === facts.filled);
}

function isNumbersLog(shape: FileShape, texts: number): boolean {
  if (shape.layout === 'long') return !isSecondTime(shape) && !hasEventTexts(shape);
  if (shape.layout === 'none') return false;
  const times = columnsOfTime(shape);
  const isMeasure = ({ numbers, openTexts, filled }: ColumnFacts, i: number): boolean =>
    !times.has(i) &&
    numbers + openTexts > 0.5 * filled &&
    numbers > 0 &&
    !(shape.hasHeader && namesDetail(shape.header[i]!));
  const numeric = shape.columns.filter(isMeasure).length;
  return numeric > 0 && !isSecondTime(shape) && (numeric >= texts - 1 || !hasEventTexts(shape));
}

/** Start and end beside each other make a list of spans. */
function isSecondTime(shape: FileShape): boolean {
  const { rows, header, columns } = shape;
  const times = columnsOfTime(shape);
  return header.some((_, i) => {
    if (times.has(i)) return false;
    const isEndName = /^(end|to|until|ende|bis|fin|fine|einde|slutt)\b/.test(plainWords(header[i]!));
    // No date reads as a number, so columns of nothing else need not be tried.
    if (!isEndName && (columns[i]!.numbers === columns[i]!.filled || isSameClock(shape, i))) return false;
    const cells = rows
      .slice(0, 100)
      .map((row) => row.cells[i]?.trim() ?? '')
      .filter((cell) => cell !== '');
    const dayFirst = cells.filter((cell) => /\d[:.h]\d/.test(cell) && parseDateTime(cell, 'dmy') !== null);
    const monthFirst = cells.filter((cell) => /\d[:.h]\d/.test(cell) && parseDateTime(cell, 'mdy') !== null);
    if (cells.length > 0 && Math.max(dayFirst.length, monthFirst.length) >= 0.8 * cells.length) return true;
    return isEndName && cells.some((cell) => /^\d{10,19}$/.test(cell));
  });
}

/** Two clocks that show one moment do not drift apart by more than this from row to row (own choice). */
const mostDriftMs = 2000;

/** The same moment on another clock, such as in UTC, in a row of numbers: as far from the row's time in every row. */
function isSameClock(shape: FileShape, column: number): boolean {
  const times = columnsOfTime(shape);
  const isNumbers = shape.columns.every(
    ({ numbers, openTexts, filled }, i) => i === column || times.has(i) || numbers + openTexts >= 0.5 * filled,
  );
  if (!isNumbers) return false;
  const read = compileTime(shape.time);
  const apart = shape.rows
    .map(({ cells }) => read(cells[column]?.trim() ?? '') - read(timeCell(cells, shape)))
    .filter((ms) => !Number.isNaN(ms));
  const usualMs = apart.toSorted((a, b) => a - b)[apart.length >> 1]!;
  return apart.length > 0 && apart.filter((ms) => Math.abs(ms - usualMs) <= mostDriftMs).length >= 0.9 * apart.length;
}

function hasEventTexts({ header, columns, rows, tagColumn }: FileShape): boolean {
  return header.some((name, i) => {
    const words = plainWords(name);
    if (
      !/\b(message|\p{L}*alarm\p{L}*|larm\p{L}*|text|meldung|description|beschreibung|event|reason|ereignis|mensaje|mensagem|messaggio|allarme|melding|storing|meddelande|komunikat|hlaseni|zprava|priority|severity)\b/u.test(
        words,
      )
    )
      return false;
    const facts = columns[i]!;
    const isText = facts.filled > 0.3 * rows.length && facts.numbers < 0.3 * facts.filled && i !== tagColumn;
    return isText || /\b(priority|severity)\b/.test(words);
  });
}
