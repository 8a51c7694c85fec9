import { DateTime } from 'luxon';
import { causes, type Cause } from '../../model/cause.js';
import { LogProblem } from '../../model/problem.js';
import type { RecordEntry } from '../../model/record.js';
import { DAY_MS } from '../../model/time-units.js';
import type { NamedZone } from '../../history/distinct-findings.js';
import { zoneOnMachine } from '../../report/text/names.js';
import { causeWords } from '../../report/text/words.js';
import { foldText } from '../../words/fold.js';
import { findZones } from '../zone/zone-find.js';

/** What was typed. */
export interface TypedFinding {
  readonly zone: string;
  readonly machine?: string;
  readonly found?: string;
  readonly date?: string;
  readonly note?: string;
}

/** What the reports kept say of the plant. */
export interface KnownPlant {
  /** Each zone once. Empty where no report is kept yet; then names are taken as they were typed. */
  readonly zones: readonly NamedZone[];
  readonly timezone: string;
}

/**
 * The entry that was meant, with the zone named as the reports name it.
 *
 * @throws LogProblem 'bad-argument' for a zone, machine, cause or date that cannot be meant.
 */
export function typedEntry(typed: TypedFinding, plant: KnownPlant, nowMs: number): RecordEntry {
  const found = causeOf(typed.found);
  const time = timeOf(typed.date, plant.timezone, nowMs);
  return { ...zoneOf(typed, plant.zones), time, found, note: typed.note ?? '' };
}

function zoneOf({ zone, machine }: TypedFinding, known: readonly NamedZone[]): Pick<RecordEntry, 'zone' | 'machine'> {
  if (known.length === 0) return { zone, machine: machine ?? null };
  const meant = findZones(known, zone, 'the reports kept');
  const onMachine = meant.filter((other) => machine === undefined || foldText(other.machine) === foldText(machine));
  const [only] = onMachine;
  if (only && onMachine.length === 1) return { zone: only.zone, machine: only.machine };
  const names = meant.map(zoneOnMachine).join(', ');
  if (!only) throw badArgument(`--machine ${machine} has no such zone.`, `The reports know ${names}.`);
  throw badArgument(
    `"${zone}" may be any of these: ${names}.`,
    'Write the whole name, and --machine where two machines have it.',
  );
}

/** By the words of --found, or those of the report ("input card"). */
function causeOf(text: string | undefined): Cause {
  const wanted = text?.trim().toLowerCase();
  const cause = causes.find((known) => known === wanted || causeWords[known] === wanted);
  if (cause) return cause;
  const what = text === undefined ? 'What was found is missing.' : `--found ${text} is not known.`;
  throw badArgument(what, `Give --found with one of ${causes.join(', ')}.`);
}

/** A day without a time is taken at noon on the plant's clock. Clocks differ by up to a day, so tomorrow is let pass. */
function timeOf(date: string | undefined, timezone: string, nowMs: number): string {
  if (date === undefined) return new Date(nowMs).toISOString();
  const given = DateTime.fromISO(date.trim(), { zone: timezone });
  if (!given.isValid) throw badArgument(`--date ${date} is not a date.`, 'Write it as 2026-03-04.');
  const isDayOnly = /^\d{4}-\d\d-\d\d$/.test(date.trim());
  const atMs = (isDayOnly ? given.set({ hour: 12 }) : given).toMillis();
  if (atMs > nowMs + DAY_MS) throw badArgument(`--date ${date} is still to come.`, 'Give the day it was found.');
  return new Date(atMs).toISOString();
}

function badArgument(what: string, todo: string): LogProblem {
  return new LogProblem('bad-argument', undefined, what, todo);
}
