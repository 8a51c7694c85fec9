import type { LogFile } from '../../model/log-file.js';
import type { PlantFile } from '../../model/plant-file.js';
import { LogProblem, type ProblemNote } from '../../model/problem.js';
import type { Zone } from '../../model/zone.js';
import { listFiles } from '../sources/file-list.js';
import { finishFiles } from './finish-file.js';
import { withoutUnsetClocks } from '../times/home-times.js';
import { openDrafts, type OpenedDrafts } from './draft-file.js';
import type { DraftFile } from './drafted-file.js';
import { settleChanges } from './settle-changes.js';
import { settleDates } from './settle-dates.js';
import { readPlantFile } from '../plant/plant.js';
import type { SurveyOptions } from './survey-options.js';
import { assembleZones } from '../columns/zones.js';
import { settleEngine } from './engine.js';

export type { SurveyOptions } from './survey-options.js';

/** All files as they were understood, and the zones found in them. Plain data. */
export interface Survey {
  readonly files: readonly LogFile[];
  readonly zones: readonly Zone[];
  /** Empty of zones where there is no plant.yaml. */
  readonly plant: PlantFile;
  readonly plantFile: string | null;
  /** Time zone of the log's clock; null = not stated, then the clock is taken as UTC. */
  readonly timezone: string | null;
  readonly problems: readonly ProblemNote[];
  /** What was taken for granted, in sentences. */
  readonly assumptions: readonly string[];
}

/**
 * Looks at the beginning, the end and some places of every file and tells what each is: kind, encoding, separators,
 * times, columns, units, and which zones they hold. Reads no file whole but workbooks and Parquet.
 *
 * @param paths Files and folders.
 * @returns What was found; files that cannot be read are in `problems`, never an error.
 * @throws LogProblem 'bad-plant-file' or 'not-found' for a plant file that cannot be used.
 */
export async function survey(paths: readonly string[], options: SurveyOptions = {}): Promise<Survey> {
  const found = await listFiles(paths);
  settleEngine(found.files.length);
  const {
    plant,
    plantFile,
    problems: plantProblems,
  } = await choosePlant(options.plant, options.ignorePlantFile ? [] : found.plantFiles);
  const settings = settingsOf(options, plant);
  const problems = [...found.problems, ...plantProblems];
  const opened: OpenedDrafts[] = [];
  for (const path of found.files) opened.push(await openDrafts(path, settings, plant));
  const settled = await settleDates(found.files, opened, (path, dates) =>
    openDrafts(path, { ...settings, dates }, plant),
  );
  const drafts = settled.flatMap((it) => it.drafts);
  problems.push(...settled.flatMap((it) => it.problems));
  const logs = settleChanges(drafts.filter((draft) => draft.kind === 'temperature').sort(byFirstTime));
  const others = drafts.filter((draft) => draft.kind !== 'temperature');
  const assembly = assembleZones(logs, plant);
  const finished = finishFiles(logs, assembly.attached, settings.unit);
  problems.push(...assembly.problems, ...finished.problems);
  const timezone = settings.timezone ?? null;
  const assumptions = [...finished.assumptions, ...clockAssumption(timezone, finished.files)];
  const files = [...withoutUnsetClocks(finished.files), ...others.map((draft) => draft.file)];
  const zones = assembly.zones.map((zone) => ({
    ...zone,
    resolutionDegC: finished.resolutionDegC.get(zone.index) ?? NaN,
  }));
  return { files, zones, plant: plant ?? { zones: [] }, plantFile, timezone, problems, assumptions };
}

function settingsOf(options: SurveyOptions, plant: PlantFile | null): SurveyOptions {
  return {
    timezone: options.timezone ?? plant?.timezone,
    dates: options.dates ?? plant?.dates,
    unit: options.unit ?? plant?.unit,
    names: options.names,
    holdMinutes: options.holdMinutes ?? plant?.holdMinutes,
  };
}

function byFirstTime(a: DraftFile, b: DraftFile): number {
  const [x, y] = [a.firstMs, b.firstMs];
  return Number.isNaN(x) || Number.isNaN(y) ? 0 : x - y || a.name.localeCompare(b.name, 'en', { numeric: true });
}

async function choosePlant(given: string | undefined, met: readonly string[]) {
  const problems: ProblemNote[] = [];
  const path = given ?? met[0] ?? null;
  if (path === null) return { plant: null, plantFile: null, problems };
  if (given === undefined)
    for (const other of met.slice(1))
      problems.push({
        ...{
          code: 'bad-plant-file',
          file: other,
          what: `There is more than one plant.yaml; ${path} is used and this one is not.`,
        },
        todo: 'Say which one with --plant.',
      });
  return { plant: await readPlantFile(path), plantFile: path, problems };
}

function clockAssumption(timezone: string | null, files: readonly LogFile[]): string[] {
  if (timezone !== null || files.every((file) => file.time.isAbsolute)) return [];
  return ["The log's clock is taken as UTC, because neither the log nor plant.yaml says its time zone."];
}

/** A zone takes some 170 kB until the page is written; so many fit the 2 GB that Node gives itself on a small machine. */
const mostZones = 5000;

/** Throws LogProblem 'nothing-readable' when a survey found no log with a zone, 'too-large' when it found too many. */
export function demandZones(found: Survey): void {
  if (found.zones.length > mostZones) throw tooManyZones(found);
  if (found.zones.length > 0) return;
  const first = found.problems[0];
  const why = first ? ` ${first.file ? `${first.file}: ` : ''}${first.what}` : '';
  const seen = found.files
    .filter((file) => file.name !== first?.file)
    .map((file) => `${file.name}: ${file.why.replace(/\.$/, '')}`)
    .slice(0, 3)
    .join('; ');
  throw new LogProblem(
    'nothing-readable',
    undefined,
    `No temperature readings were found.${why}${seen ? ` Seen: ${seen}.` : ''}`,
    `${first ? `${first.todo} ` : ''}Give the files or the folder with the logs; "looselead preview" shows what each file was taken for.`,
  );
}

function tooManyZones({ zones }: Survey): LogProblem {
  const [first, second] = zones.map(({ name }) => `"${name}"`);
  return new LogProblem(
    'too-large',
    undefined,
    `The logs hold ${zones.length} zones (${first}, ${second} and so on), and one run takes ${mostZones}.`,
    'Give the files of some machines at a time, or export the tags of heater zones only.',
  );
}
