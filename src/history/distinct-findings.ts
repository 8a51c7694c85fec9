import { DateTime } from 'luxon';
import type { ProblemNote } from '../model/problem.js';
import { placeText } from '../model/problem.js';
import type { PlacedEntry, RecordEntry } from '../model/record.js';
import { DAY_MS } from '../model/time-units.js';

export interface DistinctFindings {
  /** Each repair once, by time. */
  readonly findings: readonly PlacedEntry[];
  readonly problems: readonly ProblemNote[];
}

export interface NamedZone {
  readonly zone: string;
  readonly machine: string;
}

/**
 * Notes of one zone within this time may be about one repair: noted some days late, noted in the maintenance list and in
 * the record, or not put right the first time. A week, since lists are kept weekly; common practice.
 */
const SAME_FAULT_MS = 7 * DAY_MS;

/**
 * Findings of which each is a repair of its own.
 *
 * - An entry without a machine gets it from the one zone of that name; where two machines have one, it is left out.
 * - A zone that no report knows is left out: as a slip of the pen it would count one repair under two names.
 * - Where the record speaks of a zone, the maintenance list of that week is silent: its words are read by machine.
 * - Two different findings of the record at one zone on one day contradict each other: the later line counts.
 * - The same thing found again within a week is the same fault.
 *
 * @param entries Those of the maintenance list and of the record, the record in the order of its lines.
 * @param zones Zones of this log and of all reports kept; none = names are taken as they stand.
 * @param timezone Of the plant; a day is a day on its clock.
 * @returns The findings, and a sentence for each line of the record that did not count as it stands. Never throws.
 */
export function distinctFindings(
  entries: readonly PlacedEntry[],
  zones: readonly NamedZone[],
  timezone: string | undefined,
): DistinctFindings {
  const problems: ProblemNote[] = [];
  const named = withMachines(entries, zones, problems);
  const record = onePerDay(
    named.filter(({ place }) => place !== undefined),
    timezone,
    problems,
  );
  const list = named.filter(({ place }) => place === undefined);
  const unspoken = list.filter((entry) => !isSpokenFor(entry, record, timezone, problems));
  return { findings: eachFaultOnce([...unspoken, ...record]), problems };
}

/** Whether two entries say the same of one zone and day. */
export function isSameNote(a: RecordEntry, b: RecordEntry, timezone: string | undefined): boolean {
  return isSameZone(a, b) && a.found === b.found && dayOf(a.time, timezone) === dayOf(b.time, timezone);
}

function dayOf(time: string, timezone: string | undefined): string | null {
  return DateTime.fromISO(time, { zone: timezone ?? 'utc' }).toISODate();
}

function withMachines(
  entries: readonly PlacedEntry[],
  zones: readonly NamedZone[],
  problems: ProblemNote[],
): PlacedEntry[] {
  if (zones.length === 0) return [...entries];
  return entries.flatMap((entry) => {
    const named = withMachine(entry, zones);
    if (typeof named !== 'string') return [named];
    problems.push(note(entry, named, 'Correct the line, or delete it.'));
    return [];
  });
}

/** The entry with its machine, or why it cannot be used. */
function withMachine(entry: PlacedEntry, zones: readonly NamedZone[]): PlacedEntry | string {
  const { zone, machine } = entry;
  const machines = new Set(zones.filter((other) => other.zone === zone).map((other) => other.machine));
  if (machine !== null && machines.has(machine)) return entry;
  const [only] = machines;
  if (machine === null && machines.size === 1 && only !== undefined) return { ...entry, machine: only };
  if (machine === null && machines.size > 1) {
    return `There is a zone "${zone}" on ${[...machines].join(' and on ')}; the line says no machine, so it was left out.`;
  }
  return `No report has a zone "${zone}"${machine === null ? '' : ` on "${machine}"`}, so the line was left out.`;
}

function onePerDay(
  entries: readonly PlacedEntry[],
  timezone: string | undefined,
  problems: ProblemNote[],
): PlacedEntry[] {
  const byDay = new Map<string, PlacedEntry>();
  for (const entry of entries) {
    const key = JSON.stringify([entry.machine, entry.zone, dayOf(entry.time, timezone)]);
    const other = byDay.get(key);
    const where = placeText(other?.place).replace(/: $/, '');
    if (other?.found === entry.found)
      problems.push(note(entry, `This says the same as ${where} and counts once.`, 'Delete one of the two lines.'));
    else if (other) problems.push(contradiction(entry, other, `${where} on the same day`));
    byDay.set(key, entry);
  }
  return [...byDay.values()];
}

function isSpokenFor(
  listed: PlacedEntry,
  record: readonly PlacedEntry[],
  timezone: string | undefined,
  problems: ProblemNote[],
): boolean {
  const near = record.filter((entry) => isSameZone(entry, listed) && isWithinWeek(entry, listed));
  const [first] = near;
  if (first && near.every(({ found }) => found !== listed.found)) {
    problems.push(contradiction(first, listed, `the maintenance list of ${dayOf(listed.time, timezone)}`));
  }
  return first !== undefined;
}

function eachFaultOnce(findings: PlacedEntry[]): PlacedEntry[] {
  const kept: PlacedEntry[] = [];
  for (const finding of findings.sort((a, b) => a.time.localeCompare(b.time))) {
    const isKnown = kept.some(
      (other) => isSameZone(other, finding) && other.found === finding.found && isWithinWeek(other, finding),
    );
    if (!isKnown) kept.push(finding);
  }
  return kept;
}

function isSameZone(a: RecordEntry, b: RecordEntry): boolean {
  return a.zone === b.zone && a.machine === b.machine;
}

function isWithinWeek(a: RecordEntry, b: RecordEntry): boolean {
  return Math.abs(Date.parse(a.time) - Date.parse(b.time)) < SAME_FAULT_MS;
}

function contradiction(counts: PlacedEntry, other: PlacedEntry, where: string): ProblemNote {
  const what = `${counts.zone} was found to be ${counts.found} here, but ${other.found} in ${where}; this line counts.`;
  return note(counts, what, 'Correct or delete the line that is wrong.');
}

function note({ place }: PlacedEntry, what: string, todo: string): ProblemNote {
  return { code: 'bad-history', ...place, what, todo };
}
