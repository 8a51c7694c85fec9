import type { PlantFile } from '../../model/plant-file.js';
import type { ProblemNote } from '../../model/problem.js';
import type { Zone } from '../../model/zone.js';
import { attach } from './attach-columns.js';
import { looseName } from '../names/column-name.js';
import type { Attached, DraftZone, ZoneSource } from './draft-zone.js';
import { machinesOfFiles } from './file-machines.js';
import { nameByFolder } from './folder-machines.js';
import { withRolesOfFiles } from './file-roles.js';
import { keySeries, type Keyed } from './zone-of-series.js';

export interface ZoneAssembly {
  readonly zones: readonly Zone[];
  /** By file, then by series, in the order given. */
  readonly attached: readonly (readonly Attached[])[];
  readonly problems: readonly ProblemNote[];
}

/**
 * Joins the series of all files to zones: readings make them, set points and outputs of the same name go to them, running
 * states go to all zones of their machine. plant.yaml fills in what it knows, names matched by ear.
 */
export function assembleZones(sources: readonly ZoneSource[], plant: PlantFile | null): ZoneAssembly {
  const files = withRolesOfFiles(sources);
  const drafts = new Map<string, DraftZone>();
  const { machines, problems: apart } = machinesOfFiles(files);
  const keyed = files.map((file, i) => keySeries(file, machines[i]!, plant));
  keyed.forEach((series, file) => series.forEach((it) => addReading(drafts, it, file)));
  const list = [...drafts.values()];
  nameByFolder(list, files, plant);
  const attached = keyed.map((series, file) => {
    const isAlone = series.filter(({ roled }) => roled.role === 'running').length === 1;
    return series.map((it) => attach(it, { index: file, isRunningAlone: isAlone }, list, drafts));
  });
  const problems = [...apart, ...withoutReadings(files), ...(list.length > 0 ? unmatchedZones(list, plant) : [])];
  return { zones: nameApart(list).map((draft, index) => toZone(draft, index, files)), attached, problems };
}

function addReading(drafts: Map<string, DraftZone>, it: Keyed, file: number): void {
  if (it.roled.role !== 'reading' || it.left) return;
  const draft = drafts.get(it.key);
  if (draft) draft.readings.push({ file, roled: it.roled });
  else
    drafts.set(it.key, {
      ...{
        key: it.key,
        name: it.name,
        machine: it.machine,
        file,
        plant: it.plant,
        readings: [{ file, roled: it.roled }],
      },
      has: { reading: true, setpoint: false, output: false, running: false },
      shared: {},
    });
}

function nameApart(list: readonly DraftZone[]): readonly DraftZone[] {
  const times = new Map<string, number>();
  for (const { name } of list) times.set(looseName(name), (times.get(looseName(name)) ?? 0) + 1);
  for (const draft of list)
    if (
      times.get(looseName(draft.name))! > 1 &&
      draft.machine &&
      !looseName(draft.name).startsWith(looseName(draft.machine))
    )
      draft.name = `${draft.machine} ${draft.name}`;
  return list;
}

function toZone(draft: DraftZone, index: number, files: readonly ZoneSource[]): Zone {
  const source = files[draft.file]!;
  const { plant } = draft;
  return {
    ...{ index, name: draft.name, machine: plant?.machine ?? draft.machine ?? 'Machine', has: draft.has },
    ...{ sensor: plant?.sensor ?? null, wires: plant?.wires ?? null, card: plant?.card ?? null },
    ...{
      heaterW: plant?.heaterW ?? null,
      heaterV: plant?.heaterV ?? null,
      toleranceClass: plant?.toleranceClass ?? null,
    },
    ...{ samplingMs: source.samplingMs, resolutionDegC: NaN, isChangeLogged: source.isChangeLogged },
    ...(draft.readings.every(({ roled }) => roled.isQuantityUnknown) ? { isQuantityUnknown: true } : {}),
    ...(draft.readings.some(({ roled }) => roled.isMixed) ? { isMixed: true } : {}),
  };
}

/** A file whose set points or outputs were told, but no reading, has readings under names that no table knows. */
function withoutReadings(files: readonly ZoneSource[]): ProblemNote[] {
  return files.flatMap(({ name, roled }) => {
    const unsaid = roled.filter(({ role, series }) => role === 'ignored' && series.numbers > 0);
    const isLacking = !roled.some(({ role }) => role === 'reading') && roled.some(({ role }) => role === 'setpoint');
    if (!isLacking || unsaid.length === 0) return [];
    const names = unsaid
      .slice(0, 6)
      .map(({ series }) => `"${series.name}"`)
      .join(', ');
    return [
      {
        code: 'unknown-layout' as const,
        file: name,
        what: `The file has set points, but no name says which columns are readings; not known are ${names}.`,
        todo: 'Name each zone in plant.yaml with the key "reading" and the name of its column.',
      },
    ];
  });
}

function unmatchedZones(list: readonly DraftZone[], plant: PlantFile | null): ProblemNote[] {
  const seen = new Set(list.map((draft) => draft.plant));
  return (plant?.zones ?? [])
    .filter((zone) => !seen.has(zone))
    .map((zone) => ({
      code: 'unmatched-zone',
      what: `plant.yaml names the zone "${zone.name}", but no log has readings for it.`,
      todo: `Correct the name, or add the key "reading" with the name of its column; the logs have: ${list
        .slice(0, 8)
        .map((draft) => draft.name)
        .join(', ')}.`,
    }));
}
