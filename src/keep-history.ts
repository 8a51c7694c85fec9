import { join } from 'node:path';
import { encodeDigest } from './digest/codec.js';
import { compareWithHistory } from './history/compare.js';
import { distinctFindings } from './history/distinct-findings.js';
import { readHistory, saveRun } from './history/history-folder.js';
import { readRecord, recordFileName } from './history/record-file.js';
import { entriesFromMaintenance, trackRecord } from './history/track-record.js';
import type { Findings } from './model/findings.js';
import type { Gathered } from './model/gathered.js';

/**
 * Holds a run against the runs of a history folder, then keeps it there.
 *
 * @returns The findings with what changed and how earlier verdicts stood up.
 * @throws LogProblem `bad-history` or `write-failed`.
 */
export async function keepInHistory(findings: Findings, { evidence }: Gathered, folder: string): Promise<Findings> {
  const { runs, problems } = await readHistory(folder);
  const record = await readRecord(join(folder, recordFileName));
  const names = evidence.zones.map(({ name, machine }) => ({ zone: name, machine }));
  const earlier = runs.map((run) => run.findings);
  const found = distinctFindings(
    [...entriesFromMaintenance(evidence.maintenance, names), ...record.entries],
    [...names, ...earlier.flatMap(({ zones }) => zones)],
    findings.timezone,
  );
  const told: Findings = {
    ...findings,
    problems: [...findings.problems, ...problems, ...record.problems, ...found.problems],
    history: compareWithHistory(findings, runs),
    trackRecord: trackRecord(found.findings, earlier),
  };
  await saveRun(folder, told, evidence.digest, encodeDigest);
  return told;
}
