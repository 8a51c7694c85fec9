import type { StopEntry } from '../model/alarm.js';
import type { AlarmList } from '../model/alarm-list.js';
import type { PlantDigest } from '../model/digest.js';
import type { DowntimeFindings } from '../model/downtime-findings.js';
import type { PlantFile } from '../model/plant-file.js';
import type { Zone } from '../model/zone.js';
import { MINUTE_MS } from '../model/time-units.js';
import { calendarOf } from '../maths/calendar.js';
import type { Interval } from '../maths/intervals.js';
import { withHeldRows } from './held-rows.js';
import { machinesOf } from './machine-minutes.js';
import { reliabilityOf } from './reliability.js';
import { downtimeDefaults, type DowntimeSettings } from './settings.js';
import { recordOf, type MachineRecord, type StoppedPiece } from './stopped-pieces.js';
import type { UsualBreak } from './usual-breaks.js';
import { costOf, cutAt, minutesOf, rowsBy } from './tally.js';

export interface DowntimeInput {
  readonly zones: readonly Zone[];
  readonly digest: PlantDigest;
  readonly alarms: AlarmList;
  readonly stops: readonly StopEntry[];
  /** By zone index: spans in which the zone's readings showed a fault that would stop the machine (ms). */
  readonly faults: readonly (readonly Interval[])[];
  readonly plant: PlantFile;
}

export interface DowntimeResult {
  readonly findings: DowntimeFindings;
  /** By zone index: production minutes lost to that zone's fault. */
  readonly minutesByZone: readonly number[];
}

/**
 * Finds every stop and gives each stopped minute to exactly one of: a zone's fault, another named cause, unknown,
 * planned. See downtime.md for the rules.
 *
 * @returns Findings whose buckets add up to the stopped minutes. Never throws.
 */
export function attributeDowntime(input: DowntimeInput, settings: DowntimeSettings = downtimeDefaults): DowntimeResult {
  const machines = machinesOf(input.zones);
  const digest = withHeldRows(input.digest, input.zones);
  const records = machines.map((machine) => recordOf({ ...input, digest, machine, settings }));
  const pieces = records.flatMap((record) => record.pieces);
  const unplanned = pieces.filter(({ bucket }) => bucket !== 'planned');
  const minutesIn = (bucket: StoppedPiece['bucket']) => minutesOf(pieces.filter((piece) => piece.bucket === bucket));
  const { plant, zones } = input;
  const findings: DowntimeFindings = {
    from: sourcesOf(records, input.stops),
    stoppedMinutes: minutesOf(pieces),
    plannedMinutes: minutesIn('planned'),
    zoneFaultMinutes: minutesIn('zone-fault'),
    otherMinutes: minutesIn('other-cause'),
    restartMinutes: minutesOf(pieces.filter(({ isRestart }) => isRestart)),
    unknownMinutes: minutesIn('unknown'),
    currency: plant.currency ?? null,
    cost: costOf(unplanned, plant),
    byZone: rowsBy(
      unplanned.filter(({ zone }) => zone !== null),
      plant,
      ({ zone, machine }) => ({ name: zones[zone!]!.name, machine }),
    ),
    byMachine: rowsBy(pieces, plant, ({ machine }) => ({ name: machine, machine })),
    byWeek: byWeek(pieces, plant),
    byDay: byDay(unplanned, plant),
    pareto: rowsBy(unplanned, plant, ({ name, machine }) => ({ name, machine })),
    reliability: records.flatMap((record) => [
      reliabilityOf(record, () => true, '', settings.mtbfConfidence),
      reliabilityOf(record, ({ bucket }) => bucket === 'zone-fault', 'zone faults', settings.mtbfConfidence),
    ]),
    notes: notesOf(records, input.stops.length > 0, settings),
  };
  const minutesByZone = zones.map(({ index }) => minutesOf(pieces.filter(({ zone }) => zone === index)));
  return { findings, minutesByZone };
}

function sourcesOf(records: readonly MachineRecord[], stops: readonly StopEntry[]): DowntimeFindings['from'] {
  const from = new Set(records.map((record) => record.from));
  return [
    ...(from.has('running') ? (['running'] as const) : []),
    ...(from.has('alarms') ? (['alarms'] as const) : []),
    ...(stops.length > 0 ? (['stop list'] as const) : []),
  ];
}

/** Weeks by ISO 8601 on the plant's clock, oldest first. */
function byWeek(pieces: readonly StoppedPiece[], plant: PlantFile) {
  const weekAt = calendarOf(plant.timezone ?? 'utc', 'week');
  const rows = rowsBy(cutAt(pieces, weekAt), plant, ({ start }) => ({ name: weekAt(start).name, machine: null }));
  return rows.sort((a, b) => a.name.localeCompare(b.name) || b.minutes - a.minutes);
}

function byDay(pieces: readonly StoppedPiece[], plant: PlantFile): NonNullable<DowntimeFindings['byDay']> {
  const dayAt = calendarOf(plant.timezone ?? 'utc', 'day');
  const days = new Map<string, StoppedPiece[]>();
  for (const part of cutAt(pieces, dayAt)) {
    const { name } = dayAt(part.start);
    const own = days.get(name);
    if (own) own.push(part);
    else days.set(name, [part]);
  }
  const minutesIn = (own: readonly StoppedPiece[], wanted: StoppedPiece['bucket']) =>
    minutesOf(own.filter(({ bucket }) => bucket === wanted));
  return [...days]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([day, own]) => ({
      day,
      zoneFaultMinutes: minutesIn(own, 'zone-fault'),
      otherMinutes: minutesIn(own, 'other-cause'),
      unknownMinutes: minutesIn(own, 'unknown'),
    }));
}

function notesOf(records: readonly MachineRecord[], hasStopList: boolean, settings: DowntimeSettings): string[] {
  const named = (chosen: readonly MachineRecord[]) => chosen.map(({ machine }) => machine).join(', ');
  const blind = records.filter(({ from }) => from === 'alarms');
  const silent = records.filter(({ from }) => from === null);
  const withoutHours = records.filter(({ production }) => production.from === 'window');
  const notes: string[] = [];
  if (records.some(({ pieces }) => pieces.some(({ isRestart }) => isRestart))) {
    notes.push(
      `A zone's fault has the time until its alarm is gone (at least ${settings.resetMs / MINUTE_MS} min a stop); the time from then until the machine ran stands apart as restart.`,
    );
  }
  if (blind.length > 0) {
    notes.push(
      `No log says when ${named(blind)} ran, so stops are told from alarms and readings${hasStopList ? ', beside those of the stop list' : ''}: a machine is taken to stand while a machine alarm stands, or a zone is without reading or too cold, in production time, at least ${settings.resetMs / MINUTE_MS} min after a zone alarm; how long it took to start again cannot be told. Input alarms shorter than ${settings.tripMs / 1000} s are taken not to stop it.`,
    );
  }
  for (const { machine, production } of records) {
    if (production.breaks?.length) notes.push(breaksNote(machine, production.breaks));
  }
  if (silent.length > 0)
    notes.push(`Nothing tells when ${named(silent)} stood: no running column, alarm or stop list.`);
  if (withoutHours.length > 0) {
    notes.push(
      `Nothing tells when ${named(withoutHours)} was meant to run; all of the window counts as production time. Give shifts in plant.yaml to correct it.`,
    );
  }
  return notes;
}

function breaksNote(machine: string, breaks: readonly UsualBreak[]): string {
  const clock = (minute: number) =>
    [Math.floor(minute / 60), minute % 60].map((part) => String(part).padStart(2, '0')).join(':');
  const times = breaks.map(({ fromMinute, toMinute }) => `${clock(fromMinute)}–${clock(toMinute)}`);
  return `${machine} stood without a reason on most days at ${times.join(', ')}: taken as usual breaks, so as planned. Give shifts in plant.yaml to correct it.`;
}
