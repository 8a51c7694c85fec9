import type { PlantFile } from '../../model/plant-file.js';
import { looseName } from '../names/column-name.js';
import { folderOf } from '../names/machine-name.js';
import type { DraftZone, ZoneSource } from './draft-zone.js';

/**
 * Zones without a machine that come from several folders belong to several machines, and comparing them would mix these;
 * folders with a zone in common (one for each day) are one.
 */
export function nameByFolder(list: readonly DraftZone[], files: readonly ZoneSource[], plant: PlantFile | null): void {
  const groups: { folders: Set<string>; zones: DraftZone[] }[] = [];
  for (const draft of list.filter(({ machine }) => machine === null)) {
    const folders = new Set(draft.readings.map(({ file }) => folderOf(files[file]!.name)));
    const met = groups.filter((group) => [...folders].some((folder) => group.folders.has(folder)));
    for (const group of met) {
      groups.splice(groups.indexOf(group), 1);
      for (const folder of group.folders) folders.add(folder);
    }
    groups.push({ folders, zones: [...met.flatMap(({ zones }) => zones), draft] });
  }
  const names = groups.map(({ folders }) => [...folders][0]!);
  if (groups.length < 2 || names.some((name) => !/\p{L}/u.test(name))) return;
  for (const [i, { zones }] of groups.entries()) for (const draft of zones) draft.machine = asInPlant(names[i]!, plant);
}

function asInPlant(name: string, plant: PlantFile | null): string {
  const machines = (plant?.zones ?? []).flatMap(({ machine }) => machine ?? []);
  return machines.find((machine) => looseName(machine) === looseName(name)) ?? name;
}
