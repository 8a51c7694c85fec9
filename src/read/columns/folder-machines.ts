import type { PlantFile } from '../../model/plant-file.js';
import { looseName } from '../names/column-name.js';
import { folderOf } from '../names/machine-name.js';
import type { DraftZone, ZoneSource } from './draft-zone.js';

/**
 * Zones without a machine that come from several folders belong to several machines, and comparing them would mix these;
 * folders with a zone in common (one for each day) are one.
 */
export function nameByFolder(list: readonly DraftZone[], files: readonly ZoneSource[], plant: PlantFile | null): void {
  const groups = groupByFolders(
    list.filter(({ machine }) => machine === null),
    files,
  );
  const names = groups.map(({ folders }) => [...folders][0]!);
  if (groups.length < 2 || names.some((name) => !/\p{L}/u.test(name))) return;
  for (const [i, { zones }] of groups.entries()) for (const draft of zones) draft.machine = asInPlant(names[i]!, plant);
}

interface FolderGroup {
  readonly folders: Set<string>;
  readonly zones: DraftZone[];
}

function groupByFolders(list: readonly DraftZone[], files: readonly ZoneSource[]): readonly FolderGroup[] {
  const byFolder = new Map<string, FolderGroup>();
  for (const draft of list) {
    const folders = draft.readings.map(({ file }) => folderOf(files[file]!.name));
    const [group = { folders: new Set<string>(), zones: [] }, ...others] = new Set(
      folders.flatMap((folder) => byFolder.get(folder) ?? []),
    );
    group.zones.push(...others.flatMap(({ zones }) => zones), draft);
    for (const folder of [...others.flatMap((other) => [...other.folders]), ...folders]) {
      group.folders.add(folder);
      byFolder.set(folder, group);
    }
  }
  return [...new Set(byFolder.values())];
}

function asInPlant(name: string, plant: PlantFile | null): string {
  const machines = (plant?.zones ?? []).flatMap(({ machine }) => machine ?? []);
  return machines.find((machine) => looseName(machine) === looseName(name)) ?? name;
}
