import type { SourceNote } from '../../model/findings.js';
import type { LogColumn, LogFile } from '../../model/log-file.js';
import type { Zone } from '../../model/zone.js';
import type { Survey } from '../../read/survey/survey.js';
import { columnsByZone } from './preview-plant.js';

type Part = 'output' | 'setpoint' | 'running';

/** What is lost with a column that no zone, or not every zone, has. */
const lost: Readonly<Record<Part, readonly [string, string]>> = {
  output: [
    'No output column',
    'slow drift can only be seen in cold soaks, and heater faults only as readings that fall.',
  ],
  setpoint: ['No set point column', 'heat-up times and deviations cannot be compared with what was asked for.'],
  running: [
    'No running state',
    'faults that come with movement cannot be told from others, and lost production only from alarms.',
  ],
};

/**
 * What cannot be found for want of columns or files, in sentences.
 *
 * @param zones With what was seen in their columns: one that is blank from end to end counts as missing.
 * @param sources What the files were read as.
 */
export function missingFor(
  { files, timezone, plant }: Pick<Survey, 'files' | 'timezone' | 'plant'>,
  zones: readonly Zone[],
  sources: readonly SourceNote[],
): string[] {
  if (zones.length === 0) return [];
  const columnsOf = columnsByZone(files);
  const missing = (['output', 'setpoint', 'running'] as const).flatMap((part) => missingPart(part, zones, columnsOf));
  return [
    ...missing,
    ...missingLists(files, sources),
    ...missingFromPlant(zones),
    ...missingTimezone(files, timezone, plant),
  ];
}

function missingPart(
  part: Part,
  zones: readonly Zone[],
  columnsOf: ReadonlyMap<number, readonly LogColumn[]>,
): string[] {
  const lacking = zones.filter((zone) => !zone.has[part]);
  if (lacking.length === 0) return [];
  const where = lacking.length === zones.length ? 'on any zone' : `for ${lacking.map((zone) => zone.name).join(', ')}`;
  const columns = lacking.flatMap((zone) => (columnsOf.get(zone.index) ?? []).filter(({ role }) => role === part));
  const [what, loss] = lost[part];
  return [`${what} ${where}${blankText(columns)}: ${loss}`];
}

/** " (column "Z1 SP" holds no numbers)"; empty where there is no such column. */
function blankText(columns: readonly LogColumn[]): string {
  const names = [...new Set(columns.map(({ name }) => `"${name}"`))];
  if (names.length === 0) return '';
  return names.length === 1
    ? ` (column ${names[0]} holds no numbers)`
    : ` (column ${names[0]} and ${names.length - 1} more hold no numbers)`;
}

function missingLists(files: readonly LogFile[], sources: readonly SourceNote[]): string[] {
  const missing = [];
  const hasFlags = files.some(({ columns, tags }) => [...columns, ...tags].some(({ role }) => role === 'alarm'));
  if (!sources.some(({ kind }) => kind === 'alarm') && !hasFlags)
    missing.push(
      'No alarm log: opens shorter than the sampling step are not seen, and alarms cannot be compared with readings.',
    );
  if (!sources.some(({ kind }) => kind === 'maintenance'))
    missing.push('No maintenance list: repairs are told from the readings alone.');
  return missing;
}

function missingFromPlant(zones: readonly Zone[]): string[] {
  const missing = [];
  if (zones.every((zone) => zone.card === null))
    missing.push(
      'No input cards in plant.yaml: a fault of a card can only be told from zones that fail at the same second.',
    );
  if (zones.every((zone) => zone.sensor === null))
    missing.push('No sensor types in plant.yaml: expected ohms or millivolts cannot be printed for the zones.');
  return missing;
}

function missingTimezone(
  files: readonly LogFile[],
  timezone: string | null,
  plant: Pick<Survey, 'plant'>['plant'],
): string[] {
  const isKnown =
    timezone !== null ||
    plant.timezone !== undefined ||
    files.every((file) => file.time.isAbsolute || file.kind === 'other');
  return isKnown ? [] : ['No time zone: clock changes in spring and autumn are not corrected.'];
}
