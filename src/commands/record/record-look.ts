import { join } from 'node:path';
import { distinctFindings } from '../../history/distinct-findings.js';
import { readHistory } from '../../history/history-folder.js';
import { readRecord, recordFileName } from '../../history/record-file.js';
import { trackRecord, verdictBefore } from '../../history/track-record.js';
import type { Findings } from '../../model/findings.js';
import type { TrackRecord } from '../../model/history-findings.js';
import type { ProblemNote } from '../../model/problem.js';
import type { KnownPlant } from './record-entry.js';
import type { ListedEntry } from './record-text.js';

export interface LookedAt {
  readonly file: string;
  readonly plant: KnownPlant;
  readonly entries: readonly ListedEntry[];
  readonly track: TrackRecord;
  readonly problems: readonly ProblemNote[];
}

/** The record of a history folder as it stands, held against the reports kept there. Throws LogProblem `bad-history`. */
export async function lookAtRecord(folder: string): Promise<LookedAt> {
  const file = join(folder, recordFileName);
  const history = await readHistory(folder);
  const reports = history.runs.map(({ findings }) => findings);
  const plant = plantOf(reports);
  const record = await readRecord(file);
  const { findings, problems } = distinctFindings(record.entries, plant.zones, plant.timezone);
  const counted = new Set(findings.map(({ place }) => place?.line));
  const entries = record.entries.map((entry) => ({
    ...entry,
    said: verdictBefore(entry, reports),
    isCounted: counted.has(entry.place?.line),
  }));
  const track = trackRecord(findings, reports);
  return { file, plant, entries, track, problems: [...history.problems, ...record.problems, ...problems] };
}

function plantOf(reports: readonly Findings[]): KnownPlant {
  const zones = new Map(
    reports.flatMap((report) =>
      report.zones.map(({ zone, machine }) => [JSON.stringify([machine, zone]), { zone, machine }] as const),
    ),
  );
  return { zones: [...zones.values()], timezone: reports.at(-1)?.timezone ?? 'UTC' };
}
