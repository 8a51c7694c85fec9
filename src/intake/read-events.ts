import type { MaintenanceEntry, StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { MaintenanceRow, StopRow } from '../model/event-rows.js';
import type { SourceNote } from '../model/findings.js';
import type { LogFile } from '../model/log-file.js';
import type { PlantFile } from '../model/plant-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { Zone } from '../model/zone.js';
import { labelReader, type LabelMeaning } from '../normalise/events/label-meaning.js';
import { maintenanceEntries, stopEntries } from '../normalise/events/lists.js';
import { pairAlarms, type PairingCounts } from '../normalise/events/pair-alarms.js';
import { AlarmRowTable } from '../read/events/alarm-row-table.js';
import { readEventFile } from '../read/events/read-event-file.js';
import { readRecords, type OnBadRow, type RowReason, type TextRecord } from '../read/sources/records.js';
import { isTable, readTable } from '../read/sources/read-table.js';

export interface Events {
  /** By start, on the log's own clock turned to UTC; the shift against the temperature log is not yet taken out. */
  readonly alarms: AlarmList;
  readonly maintenance: readonly MaintenanceEntry[];
  readonly stops: readonly StopEntry[];
  readonly sources: readonly SourceNote[];
  readonly problems: readonly ProblemNote[];
}

export interface EventOptions {
  /** Turns a log's clock, counted as if it were UTC, into UTC. Absent = the clock is UTC. */
  readonly toUtc?: (clockMs: number) => number;
  /** How to read 03/04/2026 where nothing in the file decides; the temperature log may have told. */
  readonly dates?: PlantFile['dates'];
  /** First and last sample of the temperature logs, UTC ms; absent or NaN = not known. */
  readonly logMs?: { readonly start: number; readonly end: number };
}

/**
 * Reads all alarm logs, maintenance lists and stop lists of a run.
 *
 * @param files Files of kind alarm, maintenance and stops; others are passed over.
 * @returns Events with zones and machines found, and what was left out. Never throws for what is in a file.
 */
export async function readEvents(
  files: readonly LogFile[],
  zones: readonly Zone[],
  plant: PlantFile,
  { toUtc = (clockMs) => clockMs, dates = plant.dates, logMs = { start: NaN, end: NaN } }: EventOptions = {},
): Promise<Events> {
  const sink = { alarms: new AlarmRowTable(), maintenance: [] as MaintenanceRow[], stops: [] as StopRow[] };
  const sources: SourceNote[] = [];
  const problems: ProblemNote[] = [];
  for (const [index, file] of files.filter(isEventFile).entries()) {
    const read = await readEventFile(file, index, (onBadRow) => recordsOf(file, onBadRow), sink, {
      ...{ toUtc, dates },
      logMs,
    });
    sources.push(...read.sources);
    problems.push(...read.problems);
  }
  const meanings = sink.alarms.labels.map(labelReader(zones, plant));
  const { alarms, counts } = pairAlarms(sink.alarms, meanings);
  const { stops, withoutEnd } = stopEntries(sink.stops, zones, plant);
  problems.push(...ambiguousZones(meanings), ...stopsWithoutEnd(withoutEnd));
  const maintenance = maintenanceEntries(sink.maintenance, zones, plant);
  const alarmNotes = [...pairingNotes(counts), ...outsideNotes(alarms, logMs)];
  return {
    alarms,
    maintenance,
    stops,
    sources: withNotes(withNotes(sources, 'alarm', alarmNotes), 'maintenance', zonelessNotes(maintenance)),
    problems,
  };
}

function isEventFile({ kind }: LogFile): boolean {
  return kind === 'alarm' || kind === 'maintenance' || kind === 'stops';
}

function recordsOf(file: LogFile, onBadRow: (line: number, reason: string) => void): AsyncIterable<TextRecord> {
  const tell = (line: number, reason: RowReason): void => onBadRow(line, rowReasons[reason]);
  return isTable(file) ? tableRecords(file, tell) : readRecords(file, file.encoding, file.dialect, tell);
}

async function* tableRecords(file: LogFile, onBadRow: OnBadRow): AsyncGenerator<TextRecord> {
  for await (const row of readTable(file, onBadRow)) yield { ...row, isEnded: true };
}

const rowReasons: Readonly<Record<RowReason, string>> = {
  'long-line': 'a line without end',
  'open-quote': 'a quote that nothing closes',
  'nul-bytes': 'zero bytes',
  'bad-quotes': 'quotes inside a cell',
  'bad-json': 'no whole object of JSON',
};

function ambiguousZones(meanings: readonly LabelMeaning[]): ProblemNote[] {
  const texts = meanings
    .filter(({ isAmbiguousZone }) => isAmbiguousZone)
    .map(({ source, message }) => source || message);
  if (texts.length === 0) return [];
  return [
    {
      code: 'unmatched-zone',
      what: `Alarm text "${texts[0]}" fits zones of more than one machine, so it was given to none.`,
      todo: 'Say which zone is meant with alarmTexts in plant.yaml.',
      count: texts.length,
    },
  ];
}

function stopsWithoutEnd(count: number): ProblemNote[] {
  if (count === 0) return [];
  const what = `${count === 1 ? 'One stop has' : `${count} stops have`} no end after the start and did not count.`;
  return [{ code: 'bad-row', what, todo: 'Fill in when production went on.', count }];
}

/** Pairing runs over all alarm logs together, and work is sorted with that of all lists, so counts stand with the first list. */
function withNotes(sources: readonly SourceNote[], of: SourceNote['kind'], notes: readonly string[]): SourceNote[] {
  const first = sources.findIndex(({ kind }) => kind === of);
  return sources.map((source, i) => (i === first ? { ...source, notes: [...source.notes, ...notes] } : source));
}

function pairingNotes(counts: PairingCounts): string[] {
  const says: readonly (readonly [number, string])[] = [
    [counts.repeatedRows, 'Rows that say what another row had said already, left out'],
    [counts.actions, 'Rows that tell what somebody did, such as log-ins and changes of recipe, which are no alarms'],
    [counts.repeatedActivations, 'Activations of alarms that stood already, not counted again'],
    [counts.returnsWithoutStart, 'Returns of alarms whose activation the log does not hold'],
    [counts.acknowledgementsWithoutStart, 'Acknowledgements of alarms whose activation the log does not hold'],
    [counts.returnsBySource, 'Returns with another text, matched by their source'],
    [counts.endsBeforeStart, 'Rows that end before they start, taken as alarms without length'],
    [counts.withoutReturns, 'Activations in a log without returns, their length not known'],
    [
      counts.standing,
      'Alarms that still stood at the end of the list, taken as active to the end of the temperature log',
    ],
  ];
  return says.filter(([count]) => count > 0).map(([count, what]) => `${what}: ${count}.`);
}

/** Greasing a chain is of no zone; a zone that is called otherwise than in the logs may be meant, too. */
function zonelessNotes(maintenance: readonly MaintenanceEntry[]): string[] {
  const count = maintenance.filter(({ zone }) => zone === null).length;
  return count === 0 ? [] : [`Work that names no zone of the temperature logs and counts for none: ${count}.`];
}

/** Alarm lists often reach further than the temperature logs; what came outside has nothing to be held against. */
function outsideNotes({ columns }: AlarmList, { start, end }: { start: number; end: number }): string[] {
  const count = columns.startMs.reduce((sum, startMs) => sum + (startMs < start || startMs > end ? 1 : 0), 0);
  return count === 0 ? [] : [`Alarms before or after the temperature log, which do not count: ${count}.`];
}
