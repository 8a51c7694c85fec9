import { pourSamples } from '../../intake/pour-samples.js';
import { readEvents } from '../../intake/read-events.js';
import type { RejectedExample, SourceNote } from '../../model/findings.js';
import type { LogColumn, LogFile } from '../../model/log-file.js';
import type { ProblemNote } from '../../model/problem.js';
import type { Zone } from '../../model/zone.js';
import { rejectReasons, type RejectExample } from '../../read/rows/row-tally.js';
import { survey, type SurveyOptions } from '../../read/survey/survey.js';
import { unknownSensorTypes } from '../../sensors/unknown-types.js';
import { GapCount } from './preview-gaps.js';
import { missingFor } from './preview-missing.js';
import { columnsByZone, plantText } from './preview-plant.js';

export interface PreviewFile {
  readonly file: string;
  readonly kind: LogFile['kind'];
  readonly why: string;
  readonly layout: string;
  readonly encoding: string;
  readonly container: string;
  readonly time: string;
  readonly notes: readonly string[];
  readonly samplingSeconds: number | null;
  readonly rowsRead: number | null;
  readonly rowsRejected: number | null;
  readonly rejectedByReason: Readonly<Record<string, number>>;
  readonly examples: readonly RejectedExample[];
  readonly leftAlone: readonly { readonly column: string; readonly why: string }[];
}

export interface PreviewZone {
  readonly zone: string;
  readonly machine: string;
  readonly sensor: string | null;
  readonly wires: number | null;
  readonly card: string | null;
  readonly tags: Readonly<Record<string, string>>;
  readonly unit: string | null;
  readonly start: string | null;
  readonly end: string | null;
  readonly samplingSeconds: number | null;
  readonly samples: number;
  readonly notGood: number;
  readonly gaps: number;
  readonly longestGapMinutes: number;
  readonly lowestDegC: number | null;
  readonly highestDegC: number | null;
  /** Columns that are its alarm flags, and how often one of them rose. */
  readonly flags: readonly string[];
  readonly flagAlarms: number;
}

export interface Preview {
  readonly files: readonly PreviewFile[];
  readonly zones: readonly PreviewZone[];
  readonly timezone: string | null;
  readonly plantFile: string | null;
  readonly missing: readonly string[];
  readonly assumptions: readonly string[];
  readonly problems: readonly ProblemNote[];
  readonly plantText: string;
}

/** Surveys the files and reads all of them once to count what is in them; nothing is judged. */
export async function lookAt(paths: readonly string[], options: SurveyOptions): Promise<Preview> {
  const found = await survey(paths, options);
  const counts = found.zones.map((zone) => new GapCount(zone.samplingMs));
  const poured = await pourSamples(found, { block: (block) => counts[block.zone]!.take(block) });
  const { zones } = poured;
  const logMs = { start: poured.startMs, end: poured.endMs };
  const events = await readEvents(found.files, zones, found.plant, { ...poured.eventOptions, logMs });
  const sources = [...poured.sources, ...events.sources];
  const sourcesOf = (file: LogFile): (SourceNote | undefined)[] => {
    const own = sources.filter((source) => source.file === file.name);
    return own.length > 0 ? own : [undefined];
  };
  const columnsOf = columnsByZone(found.files);
  return {
    files: found.files.flatMap((file) =>
      sourcesOf(file).map((source) => previewFile(file, source, poured.examples.get(file.name)?.map(inWords))),
    ),
    zones: zones.map((zone) => {
      const flagAlarms = poured.flagAlarms.about((subject) => subject.zone === zone.index).length;
      return previewZone(zone, columnsOf.get(zone.index) ?? [], counts[zone.index]!, flagAlarms);
    }),
    ...{ timezone: found.timezone, plantFile: found.plantFile, missing: missingFor(found, zones, events.sources) },
    ...{ assumptions: [...found.assumptions, ...poured.assumptions] },
    ...{ problems: [...found.problems, ...unknownSensorTypes(found.plant), ...poured.problems, ...events.problems] },
    plantText: plantText(found),
  };
}

/** @param examples Rows left out, where the source holds only the first of each reason. */
function previewFile(
  file: LogFile,
  source: SourceNote | undefined,
  examples: readonly RejectedExample[] = source?.rejectedExamples ?? [],
): PreviewFile {
  const isLog = file.kind === 'temperature';
  const isList = source !== undefined && !isLog;
  return {
    ...{ file: file.name, kind: source?.kind ?? file.kind },
    why: source && source.kind !== file.kind ? 'its columns say so' : file.why,
    ...{ layout: isList ? source.layout : file.layoutText, encoding: file.encoding, container: file.container },
    time: isLog ? file.time.why : '',
    notes: (isList ? source.notes : file.notes).filter((note) => !note.startsWith('time:')),
    samplingSeconds: isLog ? orNull(file.samplingMs / 1000) : null,
    ...{ rowsRead: source?.rowsRead ?? null, rowsRejected: source?.rowsRejected ?? null },
    ...{ rejectedByReason: source?.rejectedByReason ?? {}, examples },
    leftAlone: isLog ? leftAlone(file) : [],
  };
}

function inWords({ line, reason, text }: RejectExample): RejectedExample {
  return { line, reason: rejectReasons[reason], text };
}

function leftAlone(file: LogFile): { column: string; why: string }[] {
  return [...file.columns, ...file.tags]
    .filter((column) => column.role === 'ignored')
    .map(({ name, why }) => ({ column: name, why }));
}

function orNull(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

const unitWords = { degC: '°C', degF: '°F', K: 'K' } as const;

function previewZone(zone: Zone, columns: readonly LogColumn[], count: GapCount, flagAlarms: number): PreviewZone {
  const reading = columns.find((column) => column.role === 'reading');
  return {
    ...{
      zone: zone.name,
      machine: zone.machine,
      sensor: zone.sensor,
      wires: zone.wires,
      card: zone.card,
      tags: tagsOf(columns),
    },
    unit: reading?.unit ? unitWords[reading.unit] : null,
    ...{
      start: isoOrNull(count.firstMs),
      end: isoOrNull(count.lastMs),
      samplingSeconds: orNull(zone.samplingMs / 1000),
    },
    ...{
      samples: count.samples,
      notGood: count.notGood,
      gaps: count.gaps,
      longestGapMinutes: Math.round(count.longestMs / 6000) / 10,
    },
    ...{ lowestDegC: orNull(count.lowestDegC), highestDegC: orNull(count.highestDegC) },
    flags: [...new Set(columns.flatMap(({ role, name }) => (role === 'alarm' ? [name] : [])))],
    flagAlarms,
  };
}

function tagsOf(columns: readonly LogColumn[]): Record<string, string> {
  const tags: Record<string, string> = {};
  for (const { role, name } of columns) if (role !== 'alarm') tags[role] ??= name;
  return tags;
}

function isoOrNull(ms: number): string | null {
  return Number.isNaN(ms) ? null : new Date(ms).toISOString();
}
