import { phraseTest, wordsOf } from '../../words/fold.js';
import { columnLook, type ColumnLook } from './cell-looks.js';
import type { EventFileKind, EventTable, TimeColumns } from './event-table.js';
import { kindOf } from './table-kind.js';
import { columnWords, shortWords, type EventRole } from './column-words.js';

type Header = readonly string[];
type Rows = readonly (readonly string[])[];

/** A column is what most of its sample cells are; common practice. */
const MOST = 0.6;
/** Of a column called end: the others hold "?", "still down" (own choice). */
const LEAST_NAMED = 0.4;
const timeRoles: readonly EventRole[] = ['acknowledged', 'end', 'start', 'time'];
const headerTests = columnWords.map(([role, phrases]) => {
  const short = shortWords.flatMap(([ofRole, words]) => (ofRole === role ? words : []));
  const whole = new Set([...phrases, ...short].map((phrase) => wordsOf(phrase).join(' ')));
  return { role, isWhole: (words: string) => whole.has(words), holds: phraseTest(phrases) };
});

/**
 * What kind of event file a table is, and which column holds what.
 *
 * @param header Column names; empty where the file has none.
 * @param rows A few dozen sample rows as cells.
 * @param called What something outside the table, such as the file's name, says that it lists; null = nothing.
 * @returns null when it is none of them (a temperature log, or no moment in it). Never throws.
 */
export function recogniseEvents(header: Header, rows: Rows, called: EventFileKind | null = null): EventTable | null {
  const width = Math.max(header.length, ...rows.map((row) => row.length));
  if (rows.length === 0 || !Number.isFinite(width) || areAssignments(rows)) return null;
  const looks = Array.from({ length: width }, (_, c) => columnLook(rows.map((row) => row[c] ?? '')));
  const times = findTimes(header, looks);
  if (!times) return null;
  const taken = new Set(Object.values(times).flatMap((columns) => [...columns]));
  const others = findOthers(header, looks, taken);
  const kind = kindOf({ ...times, ...others }, header, looks, others.value, taken, called);
  if (!kind) return null;
  const flag = kind === 'alarm' && !times.acknowledged ? acknowledgedFlag(header, looks, taken) : -1;
  delete others.value; // told what the table is; nobody reads it
  return { kind, columns: { ...times, ...others, ...(flag >= 0 && { isAcknowledged: flag }) }, header };
}

/** "zone=Z1 pv=180.2": numbers under names of their own, and no words. */
function areAssignments(rows: Rows): boolean {
  const assigned = rows.filter((row) => row.filter((cell) => /^\s*[\p{L}_.]+=[-+]?\d/u.test(cell)).length > 1).length;
  return assigned >= MOST * rows.length;
}

/** "Duration (s)", "Dauer": what stands there is how long something took. */
export function saysDuration(name: string): boolean {
  return rolesOf(name, (role) => role === 'duration').length > 0;
}

const details: readonly EventRole[] = ['acknowledged', 'code', 'priority', 'state', 'zone'];

/** "Zone", "Alarm no", "Priority": numbers under such a name are no measured values. */
export function namesDetail(name: string): boolean {
  const words = wordsOf(name).join(' ');
  return headerTests.some(({ role, isWhole }) => details.includes(role) && isWhole(words));
}

/** Roles that the words of one column name speak for, whole names before parts of names. */
function rolesOf(name: string, allowed: (role: EventRole) => boolean): EventRole[] {
  const { whole, part } = rolesOfName(name, allowed);
  return [...whole, ...part];
}

/** Roles that a column name is a word for, and those that it holds a word for. */
export function rolesOfName(
  name: string,
  allowed: (role: EventRole) => boolean = () => true,
): { readonly whole: readonly EventRole[]; readonly part: readonly EventRole[] } {
  const words = wordsOf(name).join(' ');
  const tests = words === '' ? [] : headerTests.filter(({ role }) => allowed(role));
  const whole = tests.filter(({ isWhole }) => isWhole(words));
  const part = tests.filter(({ holds }) => holds(words));
  return { whole: whole.map(({ role }) => role), part: part.map(({ role }) => role) };
}

interface TimesFound {
  start: TimeColumns;
  end?: TimeColumns;
  acknowledged?: TimeColumns;
}

function findTimes(header: Header, looks: readonly ColumnLook[]): TimesFound | null {
  const found: Partial<Record<EventRole, TimeColumns>> = {};
  const nameless: TimeColumns[] = [];
  const saysDone = (columns: TimeColumns): boolean =>
    columns.some((c) => rolesOf(header[c] ?? '', (role) => role === 'done').length > 0);
  // Work was done at "Date done", whatever stands before it.
  const moments = momentColumns(header, looks).toSorted((a, b) => Number(saysDone(b)) - Number(saysDone(a)));
  for (const columns of moments) {
    const roles = columns.flatMap((c) => timeRolesOf(header[c]));
    const role = roles.find((it) => it !== 'time') ?? roles[0];
    if (role && !found[role]) found[role] = columns;
    else nameless.push(columns);
  }
  const start = found.start ?? found.time ?? nameless.shift();
  if (!start) return null;
  const end = found.end ?? (header.length === 0 ? nameless.shift() : undefined);
  return { start, ...(end && { end }), ...(found.acknowledged && { acknowledged: found.acknowledged }) };
}

function timeRolesOf(name = ''): EventRole[] {
  return rolesOf(name, (role) => timeRoles.includes(role));
}

/**
 * Columns that hold moments: a date with a clock counts as one, the clock beside it or in a column behind whose name says
 * so, and so does each later clock of that date whose name says end or acknowledged.
 */
function momentColumns(header: Header, looks: readonly ColumnLook[]): TimeColumns[] {
  const moments: TimeColumns[] = [];
  let date = -1;
  let isAlone = false;
  for (let c = 0; c < looks.length; c++) {
    const look = looks[c]!;
    const roles = timeRolesOf(header[c]);
    if (look.moment >= MOST) moments.push([c]);
    else if (look.dateOnly >= MOST) {
      if (isAlone) moments.push([date]);
      [date, isAlone] = [c, true];
    } else if (date < 0) {
      // An end says its day where it is another one, or never.
      if (moments.length > 0 && roles.some(isLater) && look.moment + look.clockOnly >= LEAST_NAMED) moments.push([c]);
    } else if (isAlone && look.clockOnly >= MOST && (c === date + 1 || (roles.length > 0 && !roles.some(isLater)))) {
      moments.push([date, c]);
      isAlone = false;
    } else if (look.clockOnly >= LEAST_NAMED && (roles.some(isLater) || (header.length === 0 && c === date + 2)))
      moments.push([date, c]);
  }
  if (isAlone) moments.push([date]);
  return moments.toSorted((a, b) => a.at(-1)! - b.at(-1)!);
}

function isLater(role: EventRole): boolean {
  return role === 'end' || role === 'acknowledged';
}

type OthersFound = Partial<Record<Exclude<EventRole, 'start' | 'end' | 'acknowledged' | 'time'>, number>>;

function findOthers(header: Header, looks: readonly ColumnLook[], taken: Set<number>): OthersFound {
  const found: Partial<Record<EventRole, number>> = {};
  const take = (role: EventRole, column: number) => {
    found[role] = column;
    taken.add(column);
  };
  for (const wantsWhole of [true, false]) {
    for (const { role, isWhole, holds } of headerTests) {
      if (timeRoles.includes(role) || found[role] !== undefined) continue;
      const column = header.findIndex((name, c) => {
        const words = wordsOf(name).join(' ');
        return !taken.has(c) && (wantsWhole ? isWhole(words) : holds(words)) && fits(role, looks[c]!, words);
      });
      if (column >= 0) take(role, column);
    }
  }
  if (found.state === undefined) {
    const column = looks.findIndex((look, c) => !taken.has(c) && look.state >= 0.9 && (look.words > 0 || look.isPlus));
    if (column >= 0) take('state', column);
    else if (found.message !== undefined && isSwitch(looks[found.value ?? -1])) {
      found.state = found.value!;
      delete found.value;
    }
  }
  if (found.message === undefined && found.reason === undefined && found.done === undefined) {
    const column = mostWordy(looks, taken);
    if (column >= 0) take('message', column);
  }
  if (
    found.source === undefined &&
    found.zone === undefined &&
    found.machine === undefined &&
    found.message !== undefined
  ) {
    const column = mostWordy(looks, taken);
    if (column >= 0) take('source', column);
  }
  return found as OthersFound;
}

/** 1 and 0 under "Value", beside the text of an alarm. */
function isSwitch(look: ColumnLook | undefined): boolean {
  return look !== undefined && look.number === 1 && look.flag === 1 && look.distinct === 2;
}

/** A column name alone is not enough: the cells must be able to carry the role. */
function fits(role: EventRole, look: ColumnLook, words: string): boolean {
  if (look.filled === 0) return role !== 'state' && role !== 'message' && role !== 'duration';
  if (role === 'state') return look.state >= MOST || (look.isFewCodes && !notOfStates.test(words));
  if (role === 'duration') return look.span >= MOST;
  if (role === 'value') return look.number >= MOST;
  if (role === 'message' || role === 'reason') return look.words >= MOST && !isOnlyStates(look);
  return true;
}

/** "On" and "off" under "Zone 1 Alarm" tell of a state, however often; no text does so in every row. */
function isOnlyStates(look: ColumnLook): boolean {
  return look.state >= 0.9 && (look.distinct > 1 || look.gone >= 0.9);
}

/** Numbers under these headers are kinds of alarms, not states. */
const notOfStates = /typ|tip|event|class|ereignis|hendelse|tur/;

/** The column of flags whose name says acknowledged; -1 = none. */
function acknowledgedFlag(header: Header, looks: readonly ColumnLook[], taken: ReadonlySet<number>): number {
  return header.findIndex(
    (name, c) => !taken.has(c) && looks[c]!.flag >= 0.9 && rolesOf(name, (role) => role === 'acknowledged').length > 0,
  );
}

function mostWordy(looks: readonly ColumnLook[], taken: ReadonlySet<number>): number {
  let best = -1;
  looks.forEach((look, c) => {
    if (taken.has(c) || look.words < MOST || look.filled < 0.5 || isOnlyStates(look)) return;
    if (best < 0 || look.distinct > looks[best]!.distinct) best = c;
  });
  return best;
}
