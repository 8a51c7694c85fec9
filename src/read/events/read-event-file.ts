import type { MaintenanceRow, StopRow } from '../../model/event-rows.js';
import type { SourceNote } from '../../model/findings.js';
import type { LogFile } from '../../model/log-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import type { TextRecord } from '../sources/records.js';
import { longestExample } from '../rows/row-tally.js';
import type { TimeOptions } from '../times/time-format.js';
import { alarmRowTaker, type RowTaker } from './alarm-rows.js';
import type { AlarmRowTable } from './alarm-row-table.js';
import { cellOf, withoutDurationsOfEnds, type Cells, type MomentReader } from './event-columns.js';
import { HeldDates } from './held-dates.js';
import { findTable, type FoundTable } from './find-table.js';
import { maintenanceRowTaker, stopRowTaker } from './list-rows.js';
import { momentsNearLog, type LogSpan } from './moments-near-log.js';
import type { EventTable } from './event-table.js';
import { isSummary } from './summary.js';
import { TablesOfFile } from './tables-of-file.js';
import { stateNumbers } from './state-numbers.js';
import type { EventState } from './state-words.js';

const withoutColumns = {
  what: 'No columns with a time and a text were found, so none of its rows were read as events.',
  todo: 'Name the columns in the first row, for example: Time, Source, Message, State.',
};
const summary = {
  what: 'It lists how often each alarm came, not when each time, so nothing can be held against the temperatures and none of its rows were read as events.',
  todo: 'Export the list with one row for each time that an alarm came or went.',
};
const withoutClocks = {
  what: 'It tells the day of each alarm and no time of day, so nothing can be held against the temperatures and none of its rows were read as events.',
  todo: 'Export the list with the time of day of each alarm.',
};

/** Where the rows of all event files come together. */
export interface EventSink {
  readonly alarms: AlarmRowTable;
  readonly maintenance: MaintenanceRow[];
  readonly stops: StopRow[];
}

export interface EventReadOptions {
  /** Turns the log's clock, counted as if it were UTC, into UTC. */
  readonly toUtc: (clockMs: number) => number;
  readonly dates?: TimeOptions['dates'];
  /** First and last sample of the temperature logs: they tell day from month, and an alarm clock that nobody set. */
  readonly logMs?: LogSpan;
}

export interface EventFileRead {
  /** One for each table of the file. */
  readonly sources: readonly SourceNote[];
  readonly problems: readonly ProblemNote[];
}

interface TableRead {
  readonly source: SourceNote;
  readonly problems: readonly ProblemNote[];
}

/** Rows looked at before the columns and the time format are decided. */
const SAMPLE_ROWS = 2000;
const notKnown: LogSpan = { start: NaN, end: NaN };

/**
 * Reads one alarm log, maintenance list or stop list into `sink`.
 *
 * @param file As the survey describes it; its header is looked for again where it has none.
 * @param fileIndex Tells repeated rows of two files from two rows of one.
 * @param records Gives its rows as cells, and is told where to say which rows could not be cut into cells.
 * @returns What was read and left out. LogProblems of the records end the reading and are told, not thrown.
 */
export async function readEventFile(
  file: LogFile,
  fileIndex: number,
  records: (onBadRow: (line: number, reason: string) => void) => AsyncIterable<TextRecord>,
  sink: EventSink,
  options: EventReadOptions,
): Promise<EventFileRead> {
  const tables = new TablesOfFile(() => new EventReading(file, fileIndex, sink, options));
  const problems: ProblemNote[] = [];
  try {
    for await (const record of records((line, reason) => tables.first.refuse(line, reason))) tables.take(record);
  } catch (error) {
    if (!(error instanceof LogProblem)) throw error;
    problems.push(error.toNote());
  }
  const read = tables.all.map((table) => table.finish());
  return {
    sources: read.map(({ source }) => source),
    problems: [...problems, ...read.flatMap((it) => it.problems)],
  };
}

class EventReading {
  readonly problems: ProblemNote[] = [];
  private readonly samples: TextRecord[] = [];
  private takeCells: RowTaker | null = null;
  private table: EventTable | null = null;
  private moments: MomentReader | null = null;
  private dates: HeldDates | null = null;
  /** Makes rows as people write them plain; null for one that is no row of data. */
  private plain: (cells: Cells) => Cells | null = (cells) => cells;
  private written: FoundTable | null = null;
  private states: ReadonlyMap<string, EventState> | null = null;
  private isUnknown = false;
  private rowsRead = 0;
  private readonly refused = new Map<string, { count: number; line: number; text: string }>();

  constructor(
    private readonly file: LogFile,
    private readonly fileIndex: number,
    private readonly sink: EventSink,
    private readonly options: EventReadOptions,
  ) {}

  take(record: TextRecord): void {
    if (this.isUnknown) return;
    if (this.takeCells) return this.takeRow(record);
    this.samples.push(record);
    if (this.samples.length >= SAMPLE_ROWS) this.understand();
  }

  finish(): TableRead {
    if (!this.takeCells && !this.isUnknown) this.understand();
    for (const [reason, { count, line }] of this.refused) {
      this.problems.push({
        code: 'bad-row',
        file: this.file.name,
        line,
        what: `${count === 1 ? 'One row was' : `${count} rows were`} left out: ${reason}; the first is on line ${line}.`,
        todo: 'Correct the rows, or ignore this if they hold no events.',
        count,
      });
    }
    const rejectedByReason = Object.fromEntries([...this.refused].map(([reason, { count }]) => [reason, count]));
    const rowsRejected = [...this.refused.values()].reduce((sum, { count }) => sum + count, 0);
    const kind = this.table?.kind ?? (this.file.kind === 'other' ? 'alarm' : this.file.kind);
    const source = { file: this.file.name, kind, layout: this.layout(), rowsRead: this.rowsRead, rowsRejected };
    const examples = [...this.refused].map(([reason, { line, text }]) => ({ reason, line, text }));
    const rejectedExamples = examples.length === 0 ? {} : { rejectedExamples: examples };
    return {
      source: { ...source, rejectedByReason, ...rejectedExamples, notes: this.notes() },
      problems: this.problems,
    };
  }

  /** Decides header, columns and time format from the first rows, then takes those rows. */
  private understand(): void {
    const { toUtc, dates, logMs = notKnown } = this.options;
    const found = findTable(this.file, this.samples, logMs);
    const sampled = found && new HeldDates(found.table.columns.start);
    const cells = found?.list.rows.map((row) => sampled!.fill(row)) ?? [];
    const columnName = found?.table.header[found.table.columns.start[0]] ?? '';
    this.moments = found && momentsNearLog(found.table.columns, cells, toUtc, { dates, columnName }, logMs);
    if (!found || !this.moments) return this.giveUp(withoutColumns);
    if (found.table.kind === 'alarm' && isSummary(found.table.header, cells)) return this.giveUp(summary);
    if (found.table.kind === 'alarm' && !cells.some(this.moments.hasClock)) return this.giveUp(withoutClocks);
    const columns = withoutDurationsOfEnds(found.table.columns, cells);
    this.table = { ...found.table, columns };
    const times = cells.map(this.moments.start).filter((ms) => !Number.isNaN(ms));
    const isRising = times.length > 0 && times.at(-1)! >= times[0]!;
    this.dates = new HeldDates(columns.start, isRising ? this.moments.format.order : null);
    this.written = found;
    this.plain = found.list.begin();
    const above = this.samples
      .filter(({ line }) => line < (found.rows[0]?.line ?? 0))
      .map((row) => row.cells.join('; '));
    this.states = stateNumbers(columns, cells, above);
    this.takeCells = this.takerOf(this.table, this.moments, cells);
    for (const record of found.rows) this.takeRow(record);
    this.samples.length = 0;
  }

  private giveUp(why: Pick<ProblemNote, 'what' | 'todo'>): void {
    this.isUnknown = true;
    if (this.samples.length > 0) this.problems.push({ code: 'unknown-layout', file: this.file.name, ...why });
  }

  private takerOf(table: EventTable, moments: MomentReader, samples: readonly Cells[]): RowTaker {
    if (table.kind === 'alarm') {
      const { logMs } = this.options;
      return alarmRowTaker(table, moments, this.fileIndex, this.sink.alarms, logMs?.start, this.states);
    }
    const takeWork = maintenanceRowTaker(table, moments, this.sink.maintenance);
    if (table.kind !== 'stops') return takeWork;
    const takeStop = stopRowTaker(table, moments, this.sink.stops, samples);
    if (table.columns.done === undefined) return takeStop;
    // What was done in a stop is work, too.
    return (cells) => takeStop(cells) ?? (cellOf(cells, table.columns.done) === '' ? null : takeWork(cells));
  }

  private takeRow({ line, cells, isEnded }: TextRecord): void {
    const isHalf = !isEnded && this.written !== null && cells.length < this.written.header.length;
    if (cells.every((cell) => cell.trim() === '')) return;
    const plain = this.plain(cells);
    if (plain === null) return;
    const refusal = isHalf ? 'half a line at the end of the file' : this.takeCells!(this.dates!.fill(plain));
    if (refusal === null) this.rowsRead++;
    else this.refuse(line, refusal, cells);
  }

  /** @param cells Absent where the row could not be cut into cells. */
  refuse(line: number, reason: string, cells: readonly string[] = []): void {
    const known = this.refused.get(reason);
    if (known) known.count++;
    else
      this.refused.set(reason, {
        count: 1,
        line,
        text: cells.join(this.file.dialect.separator).slice(0, longestExample),
      });
  }

  private layout(): string {
    if (!this.table || !this.moments) return 'not understood';
    const { columns, kind } = this.table;
    if (kind !== 'alarm') return `a row per ${kind === 'stops' ? 'stop' : 'job'}, ${this.moments.format.why}`;
    const shape =
      columns.end !== undefined
        ? 'a row per alarm with start and end'
        : columns.duration !== undefined
          ? 'a row per alarm with start and duration'
          : 'a row per event';
    return `${shape}, ${this.moments.format.why}`;
  }

  private notes(): string[] {
    if (!this.table) return [];
    const { columns, header } = this.table;
    const named = Object.entries(columns).map(([role, column]: [string, number | readonly number[]]) => {
      const places = typeof column === 'number' ? [column] : column;
      return `${role === 'isAcknowledged' ? 'acknowledged or not' : role}: ${places.map((c) => header[c] || `column ${c + 1}`).join(' + ')}`;
    });
    const numbers = [...(this.states ?? [])].map(([number, state]) => `${number} ${stateText[state]}`);
    const notes = [`columns: ${named.join('; ')}`];
    if (numbers.length > 0) notes.push(`states: ${numbers.join(', ')}`);
    notes.push(...(this.written?.list.notes ?? []));
    const undated = this.dates?.count ?? 0;
    if (undated > 0) notes.push(`without a date of their own, taken with that of the row above: ${countText(undated)}`);
    const nights = this.dates?.afterMidnight ?? 0;
    if (nights > 0) notes.push(`of these behind midnight, since the clock goes back: ${countText(nights)}`);
    return notes;
  }
}

function countText(rows: number): string {
  return rows === 1 ? 'one row' : `${rows} rows`;
}

const stateText: Readonly<Record<EventState, string>> = {
  active: 'come',
  acknowledged: 'acknowledged',
  cleared: 'gone',
};
