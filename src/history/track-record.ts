import type { MaintenanceEntry } from '../model/alarm.js';
import { causes, type Cause } from '../model/cause.js';
import type { Findings, ZoneFinding } from '../model/findings.js';
import type { TrackRecord } from '../model/history-findings.js';
import type { RecordEntry } from '../model/record.js';
import { DAY_MS } from '../model/time-units.js';
import { clopperPearson } from '../maths/binomial-interval.js';
import type { NamedZone } from './distinct-findings.js';

/** A verdict is checked by what was found from the start of its window until this long after its end; common practice. */
const VALID_DAYS = 30;

/** Entries of the maintenance list whose words tell what was found. */
export function entriesFromMaintenance(
  entries: readonly MaintenanceEntry[],
  zoneNames: readonly NamedZone[],
): RecordEntry[] {
  return entries.flatMap(({ timeMs, zone, cause, done, found }) => {
    const named = zone === null ? undefined : zoneNames[zone];
    if (!named || cause === null) return [];
    return [
      { ...named, time: new Date(timeMs).toISOString(), found: cause, note: [done, found].filter(Boolean).join('; ') },
    ];
  });
}

/**
 * How often verdicts proved right. Each finding is held against the last run before it that called the zone faulty or
 * watched it; "no fault found" refutes such a verdict.
 *
 * @param findings Each repair once, as `distinctFindings` gives them. @param runs Earlier runs, any order.
 * @returns Counts, and per cause said the share that was right with exact 95 % limits (Clopper–Pearson, from the Beta
 *   distribution). Findings no verdict speaks of are not counted. Never throws.
 */
export function trackRecord(findings: readonly RecordEntry[], runs: readonly Findings[]): TrackRecord {
  const pairs = findings.flatMap((finding) => {
    const said = verdictBefore(finding, runs);
    return said ? [{ said, isRight: said === finding.found }] : [];
  });
  const byCause = causes.flatMap((cause) => {
    const own = pairs.filter(({ said }) => said === cause);
    const right = own.filter(({ isRight }) => isRight).length;
    return own.length === 0 ? [] : [{ cause, said: own.length, right, ...clopperPearson(right, own.length) }];
  });
  return { confirmed: pairs.length, right: pairs.filter(({ isRight }) => isRight).length, byCause };
}

/** What the last report said of the zone before something was found there; null where none called it faulty. */
export function verdictBefore({ zone, machine, time }: RecordEntry, runs: readonly Findings[]): Cause | null {
  const at = Date.parse(time);
  const latestFirst = [...runs].sort((a, b) => b.window.end.localeCompare(a.window.end));
  for (const run of latestFirst) {
    if (at < Date.parse(run.window.start) || at > Date.parse(run.window.end) + VALID_DAYS * DAY_MS) continue;
    const finding = run.zones.find((other) => other.zone === zone && (machine === null || other.machine === machine));
    if (finding && (finding.status === 'faulty' || finding.status === 'watch')) return topCause(finding);
  }
  return null;
}

/** The likeliest cause that is a fault. */
function topCause({ probabilities }: ZoneFinding): Cause {
  return causes
    .filter((cause) => cause !== 'none')
    .reduce((best, cause) => (probabilities[cause] > probabilities[best] ? cause : best));
}
