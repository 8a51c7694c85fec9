import { pourSamples, type PourResult } from '../intake/pour-samples.js';
import type { LogColumn, LogFile } from '../model/log-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { Zone } from '../model/zone.js';
import { rejectReasons, type RejectExample } from '../read/row-tally.js';
import { survey, type Survey, type SurveyOptions } from '../read/survey.js';
import { GapCount } from './preview-gaps.js';
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
  readonly examples: readonly { readonly line: number; readonly reason: string; readonly text: string }[];
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

/** Surveys the files and reads the temperature logs once to count what is in them. */
export async function lookAt(paths: readonly string[], options: SurveyOptions): Promise<Preview> {
  const found = await survey(paths, options);
  const counts = found.zones.map((zone) => new GapCount(zone.samplingMs));
  const poured = await pourSamples(found, { block: (block) => counts[block.zone]!.take(block) });
  const columnsOf = columnsByZone(found.files);
  return {
    files: found.files.map((file) => previewFile(file, poured)),
    zones: found.zones.map((zone) => previewZone(zone, columnsOf.get(zone.index) ?? [], counts[zone.index]!)),
    ...{ timezone: found.timezone, plantFile: found.plantFile, missing: missingFor(found) },
    ...{ assumptions: [...found.assumptions, ...poured.assumptions] },
    ...{ problems: [...found.problems, ...poured.problems] },
    plantText: plantText(found),
  };
}

function previewFile(file: LogFile, poured: PourResult): PreviewFile {
  const source = poured.sources.find((it) => it.file === file.name);
  const isLog = file.kind === 'temperature';
  return {
    ...{
      file: file.name,
      kind: file.kind,
      why: file.why,
      layout: file.layoutText,
      encoding: file.encoding,
      container: file.container,
    },
    ...{
      time: file.layout === 'none' && !isLog ? '' : file.time.why,
      notes: file.notes.filter((note) => !note.startsWith('time:')),
    },
    samplingSeconds: orNull(file.samplingMs / 1000),
    ...{
      rowsRead: source?.rowsRead ?? null,
      rowsRejected: source?.rowsRejected ?? null,
      rejectedByReason: source?.rejectedByReason ?? {},
    },
    examples: (poured.examples.get(file.name) ?? []).map(inWords),
    leftAlone: isLog ? leftAlone(file) : [],
  };
}

function inWords({ line, reason, text }: RejectExample) {
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

function previewZone(zone: Zone, columns: readonly LogColumn[], count: GapCount): PreviewZone {
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
  };
}

function tagsOf(columns: readonly LogColumn[]): Record<string, string> {
  const tags: Record<string, string> = {};
  for (const { role, name } of columns) tags[role] ??= name;
  return tags;
}

function isoOrNull(ms: number): string | null {
  return Number.isNaN(ms) ? null : new Date(ms).toISOString();
}

/** What cannot be found for want of columns or files, in sentences. */
export function missingFor({
  zones,
  files,
  timezone,
  plant,
}: Pick<Survey, 'zones' | 'files' | 'timezone' | 'plant'>): string[] {
  if (zones.length === 0) return [];
  const without = (has: keyof Zone['has']): string | null => {
    const lacking = zones.filter((zone) => !zone.has[has]);
    if (lacking.length === 0) return null;
    return lacking.length === zones.length ? 'on any zone' : `for ${lacking.map((zone) => zone.name).join(', ')}`;
  };
  const missing: string[] = [];
  const say = (where: string | null, text: (where: string) => string): void =>
    void (where && missing.push(text(where)));
  say(
    without('output'),
    (where) =>
      `No output column ${where}: slow drift can only be seen in cold soaks, and heater faults only as readings that fall.`,
  );
  say(
    without('setpoint'),
    (where) => `No set point column ${where}: heat-up times and deviations cannot be compared with what was asked for.`,
  );
  say(
    without('running'),
    (where) =>
      `No running state ${where}: faults that come with movement cannot be told from others, and lost production only from alarms.`,
  );
  if (!files.some((file) => file.kind === 'alarm'))
    missing.push(
      'No alarm log: opens shorter than the sampling step are not seen, and alarms cannot be compared with readings.',
    );
  if (!files.some((file) => file.kind === 'maintenance'))
    missing.push('No maintenance list: repairs are told from the readings alone.');
  if (zones.every((zone) => zone.card === null))
    missing.push(
      'No input cards in plant.yaml: a fault of a card can only be told from zones that fail at the same second.',
    );
  if (zones.every((zone) => zone.sensor === null))
    missing.push('No sensor types in plant.yaml: expected ohms or millivolts cannot be printed for the zones.');
  const isTimeKnown =
    timezone !== null ||
    plant.timezone !== undefined ||
    files.every((file) => file.time.isAbsolute || file.kind === 'other');
  if (!isTimeKnown) missing.push('No time zone: clock changes in spring and autumn are not corrected.');
  return missing;
}
