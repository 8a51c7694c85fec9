import { alarmRowState, type AlarmLabel, type AlarmRowState } from '../../model/event-rows.js';
import { farMs, isUnsetClock } from '../times/home-times.js';
import type { AlarmRowTable } from './alarm-row-table.js';
import { headerUnitMs, parseDurationMs } from './duration.js';
import { cellOf, type Cells, type MomentReader } from './event-columns.js';
import type { EventTable } from './event-table.js';
import { eventState, splitMessageState, type EventState } from './state-words.js';

/** Why a row was left out, as said in the findings. */
export type RowRefusal =
  | 'no time that can be read'
  | 'a day without a time'
  | 'state word not known'
  | 'no text'
  | 'its end is years from its start'
  | 'the clock had not been set: the time is where clocks begin to count';

/** Reads one row; null = taken, else why not. */
export type RowTaker = (cells: Cells) => RowRefusal | null;

/** A plain number in an alarm log's duration column counts seconds unless its header says otherwise; common practice. */
const PLAIN_DURATION_MS = 1000;
/** Distinct rows whose meaning is kept at hand; more only costs time. */
const LARGEST_CACHE = 50_000;

/** Measured values inside a message make every row another text: "PV = 203.4" and "203.4 °C" become #. */
const measuredValue =
  /(?<=[=:(<>]\s*|\b(?:at|is|value|pv|limit)\s+)[-+]?\d+(?:[.,]\d+)?|[-+]?\d+(?:[.,]\d+)?(?=\s*(?:°\s?[CF]|deg\.?\s?[CF]\b|%))/giu;

/**
 * Makes the reader of one alarm log's rows.
 *
 * @param file Index of the file.
 * @param table Takes the rows.
 * @param logStartMs When the temperature logs begin; NaN where that is not known.
 * @param numbers What the numbers of the state column stand for; null where it holds words.
 */
export function alarmRowTaker(
  { columns, header }: EventTable,
  moments: MomentReader,
  file: number,
  table: AlarmRowTable,
  logStartMs = NaN,
  numbers: ReadonlyMap<string, EventState> | null = null,
): RowTaker {
  const plainMs = headerUnitMs(header[columns.duration ?? -1] ?? '') ?? PLAIN_DURATION_MS;
  const isSpan = columns.end !== undefined || columns.duration !== undefined;
  const meanings = new Map<string, { label: number; state: AlarmRowState } | RowRefusal>();

  const meaningOf = (cells: Cells) => {
    const { text, state: messageState } = splitMessageState(
      cellOf(cells, columns.message),
      isSpan || cellOf(cells, columns.state) !== '',
    );
    const label: AlarmLabel = {
      source: cellOf(cells, columns.source),
      zone: cellOf(cells, columns.zone),
      machine: cellOf(cells, columns.machine),
      code: cellOf(cells, columns.code),
      message: text.replace(measuredValue, '#') || limitWord(cellOf(cells, columns.state)),
      priority: cellOf(cells, columns.priority),
    };
    if (!label.source && !label.zone && !label.code && !label.message) return 'no text' as const;
    if (isSpan) return { label: table.labelOf(label), state: alarmRowState.span };
    const stateCell = cellOf(cells, columns.state);
    const state = stateCell === '' ? messageState : (numbers?.get(stateCell) ?? eventState(stateCell) ?? messageState);
    if (state === null && stateCell !== '') return 'state word not known' as const;
    return { label: table.labelOf(label), state: state === null ? alarmRowState.plain : alarmRowState[state] };
  };

  return (cells) => {
    const startMs = moments.start(cells);
    if (Number.isNaN(startMs)) return 'no time that can be read';
    if (columns.start.length === 2 && cellOf(cells, columns.start[1]) === '') return 'a day without a time';
    if (isUnsetClock(startMs) && logStartMs > startMs + farMs) {
      return 'the clock had not been set: the time is where clocks begin to count';
    }
    /** Lists write the begin of their clock, or a year like 1900, for "not yet" (common practice). */
    const known = (timeMs: number) => (timeMs < startMs - farMs ? NaN : timeMs);
    const key = aboutKey(cells);
    const meaning = meanings.get(key) ?? meaningOf(cells);
    if (meanings.size < LARGEST_CACHE) meanings.set(key, meaning);
    if (typeof meaning === 'string') return meaning;
    const durationMs = columns.duration === undefined ? NaN : parseDurationMs(cellOf(cells, columns.duration), plainMs);
    const endMs = known(moments.end(cells));
    table.add(
      file,
      meaning.state,
      startMs,
      Number.isNaN(endMs) ? startMs + durationMs : endMs,
      isSaidAcknowledged(cells) ? startMs : known(moments.acknowledged(cells)),
      meaning.label,
    );
    return null;
  };

  /** A flag beside an alarm that stands says that it was acknowledged by then. */
  function isSaidAcknowledged(cells: Cells): boolean {
    return /^(?:1|y|yes|true|x|ja|oui|si|tak|ano|是)$/iu.test(cellOf(cells, columns.isAcknowledged));
  }

  function aboutKey(cells: Cells): string {
    const { source, zone, machine, code, message, state, priority } = columns;
    return [source, zone, machine, code, message, state, priority]
      .map((column) => cellOf(cells, column))
      .join('\u0000');
  }
}

/** A log of tag and limit letter alone ("FIR123, L") has its message in the state column; "NR" is its return. */
function limitWord(state: string): string {
  return /^(h|l|hh|ll|hi|lo|hihi|lolo)\b/iu.exec(state)?.[1] ?? '';
}
