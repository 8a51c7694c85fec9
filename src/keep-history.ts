import { join } from 'node:path';
import { encodeDigest } from './digest/codec.js';
import { compareWithHistory } from './history/compare.js';
import { distinctFindings, type DistinctFindings } from './history/distinct-findings.js';
import { readHistory, saveRun, type HistoryRead } from './history/history-folder.js';
import { readRecord, recordFileName } from './history/record-file.js';
import { entriesFromMaintenance, trackRecord } from './history/track-record.js';
import type { Findings } from './model/findings.js';
import type { Gathered } from './model/gathered.js';
import type { ProblemNote } from './model/problem.js';
import type { ConfirmedFinding, PlacedEntry } from './model/record.js';

/** What a history folder holds before this run. */
export interface Past {
  readonly folder: string;
  readonly runs: HistoryRead['runs'];
  /** Each repair once, from the maintenance list and the record. */
  readonly repairs: readonly PlacedEntry[];
  /**
   * The repairs for the weighing. Absent where nobody keeps a record: what a list's words mean is read by machine, and
   * moves the shares only where a person stands beside it.
   */
  readonly confirmed?: readonly ConfirmedFinding[];
  readonly problems: readonly ProblemNote[];
}

/** Reads the runs and the record of a history folder. Throws LogProblem `bad-history`. */
export async function readPast({ evidence, timezone }: Gathered, folder: string): Promise<Past> {
  const { runs, problems } = await readHistory(folder);
  const record = await readRecord(join(folder, recordFileName));
  const names = evidence.zones.map(({ name, machine }) => ({ zone: name, machine }));
  const { findings, problems: doubts }: DistinctFindings = distinctFindings(
    [...entriesFromMaintenance(evidence.maintenance, names), ...record.entries],
    [...names, ...runs.flatMap((run) => run.findings.zones)],
    timezone ?? undefined,
  );
  const confirmed = findings.map(({ zone, machine, time, found }) => ({
    found,
    zone: evidence.zones.find((other) => other.name === zone && other.machine === machine)?.index ?? null,
    isBeforeLog: Date.parse(time) < evidence.digest.startMs,
  }));
  return {
    folder,
    runs,
    repairs: findings,
    ...(record.isKept ? { confirmed } : {}),
    problems: [...problems, ...record.problems, ...doubts],
  };
}

/**
 * Holds a run against the runs of a history folder, then keeps it there.
 *
 * @returns The findings with what changed and how earlier verdicts stood up.
 * @throws LogProblem `write-failed`.
 */
export async function keepInHistory(
  findings: Findings,
  { evidence }: Gathered,
  { folder, runs, repairs, problems }: Past,
): Promise<Findings> {
  const told: Findings = {
    ...findings,
    problems: [...findings.problems, ...problems],
    history: compareWithHistory(findings, runs),
    trackRecord: trackRecord(
      repairs,
      runs.map((run) => run.findings),
    ),
  };
  await saveRun(folder, told, evidence.digest, encodeDigest);
  return told;
}
