import { createHash } from 'node:crypto';
import type { Findings } from '../model/findings.js';

/** A run as a history folder keeps it: the findings without traces, marks and checks, which can be made again. */
export interface StoredRun {
  /** Equal for two runs over the same export. */
  readonly key: string;
  readonly findings: Findings;
}

/** Name of a run's findings file: the end of its window, then its key. */
export const runFilePattern = /^run-(\d{8}T\d{6}Z)-([0-9a-f]{12})\.json$/;

/** What makes two runs the same: window, zones, and what was read from which kind of file. */
export function keyOf({ window, zones, sources }: Findings): string {
  const read = sources.map(({ kind, rowsRead, rowsRejected }) => `${kind} ${rowsRead} ${rowsRejected}`).sort();
  const about = JSON.stringify([window, zones.map(({ zone, machine }) => [machine, zone]).sort(), read]);
  return createHash('sha256').update(about).digest('hex').slice(0, 12);
}

/** Name under which a run's findings are kept; the same run gets the same name. */
export function fileNameOf(findings: Findings): string {
  const end = new Date(findings.window.end).toISOString().replace(/[-:]|\.\d+/g, '');
  return `run-${end}-${keyOf(findings)}.json`;
}

/** Findings small enough to keep for years: some 100 kB for 24 zones. */
export function slim(findings: Findings): Findings {
  const zones = findings.zones.map((zone) => ({
    ...zone,
    trace: null,
    checks: [],
    terms: [],
    duty: [],
    faultMarks: [],
    alarmMarks: [],
  }));
  return { ...findings, zones, history: null };
}
