import { DateTime } from 'luxon';
import type { ProblemNote } from '../model/problem.js';
import { placeText } from '../model/problem.js';
import type { PlacedEntry, RecordEntry } from '../model/record.js';

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
 * The same thing found again at the same zone within this time is the same fault: noted some days late, noted both in
 * the maintenance list and in the record, or not put right the first time. A week, since lists are kept weekly; common
 * practice.
 */
const SAME_FAULT_MS = 7 * 86_400_000;

/**
 * Findings of which each is a repair of its own.
 *
 * - An entry without a machine gets it from the one zone of that name; where two machines have one, it is left out.
 * - A zone that no report knows is left out: as a slip of the pen it would count one repair under two names.
 * - Two different findings at one zone on one day contradict each other: the one written later counts, the record before
 *   the maintenance list.
 *
 * @param entries Those of the maintenance list first, then the record in the order of its lines.
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
  const byDay = new Map<string, PlacedEntry>();
  for (const entry of entries) {
    const named = withMachine(entry, zones);
    if (typeof named === 'string') {
      problems.push(note(entry, named, 'Correct the line, or delete it.'));
      continue;
    }
    const key = JSON.stringify([named.machine, named.zone, dayOf(named.time, timezone)]);
    const other = byDay.get(key);
    if (other) problems.push(...aboutTwo(other, named));
    byDay.set(key, named);
  }
  return { findings: eachFaultOnce([...byDay.values()]), problems };
}

/** Whether two entries say the same of one zone and day. */
export function isSameNote(a: RecordEntry, b: RecordEntry, timezone: string | undefined): boolean {
  if (a.zone !== b.zone || a.machine !== b.machine || a.found !== b.found) return false;
  return dayOf(a.time, timezone) === dayOf(b.time, timezone);
}

function dayOf(time: string, timezone: string | undefined): string | null {
  return DateTime.fromISO(time, { zone: timezone ?? 'utc' }).toISODate();
}

function withMachine(entry: PlacedEntry, zones: readonly NamedZone[]): PlacedEntry | string {
  if (zones.length === 0) return entry;
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

/** Two of one zone and day: a contradiction is told, and a line of the record that says what another line says. */
function aboutTwo(earlier: PlacedEntry, later: PlacedEntry): ProblemNote[] {
  const where = earlier.place ? placeText(earlier.place).replace(/: $/, '') : 'the maintenance list';
  if (earlier.found !== later.found) {
    const what = `${later.zone} was found to be ${later.found} here, but ${earlier.found} in ${where} on the same day; this line counts.`;
    return [note(later, what, 'Delete the line that is wrong.')];
  }
  if (!earlier.place || !later.place) return [];
  return [note(later, `This says the same as ${where} and counts once.`, 'Delete one of the two lines.')];
}

function eachFaultOnce(findings: PlacedEntry[]): PlacedEntry[] {
  const kept: PlacedEntry[] = [];
  for (const finding of findings.sort((a, b) => a.time.localeCompare(b.time))) {
    const isSame = (other: PlacedEntry): boolean =>
      other.zone === finding.zone &&
      other.machine === finding.machine &&
      other.found === finding.found &&
      Date.parse(finding.time) - Date.parse(other.time) < SAME_FAULT_MS;
    if (!kept.some(isSame)) kept.push(finding);
  }
  return kept;
}

function note({ place }: PlacedEntry, what: string, todo: string): ProblemNote {
  return { code: 'bad-history', ...place, what, todo };
}
