import type { ProblemNote } from '../../model/problem.js';
import { looseName } from '../names/column-name.js';
import { zoneOfPreamble } from '../names/zone-name.js';
import { folderOf, machineOfPath, machineOfPreamble, stemOf } from '../names/machine-name.js';
import type { ZoneSource } from './draft-zone.js';
import { filesOfOtherValues } from './other-values.js';

export interface FileMachine {
  /** null = nothing says which. */
  readonly name: string | null;
  /** True when a file of another machine has the same names; then the name of a zone alone tells no zone. */
  readonly isShared: boolean;
  /** Name of the only zone of the file, where its folder says it and nothing else does. */
  readonly zone?: string;
}

export interface FileMachines {
  /** By file. */
  readonly machines: readonly FileMachine[];
  readonly problems: readonly ProblemNote[];
}

/** What may tell the files of two machines apart, the best first; the whole name of a file is told apart from any other. */
const labels: readonly ((path: string) => string)[] = [stemOf, folderOf, baseOf, (path) => path];

/**
 * Says which machine each file belongs to: the one that its path or a line above its header names. Files with the same
 * zones but other values at the same time are of several machines, whatever they are called; these are then named after
 * the files or their folders, and this is told. Files of one zone that none of them names are of several zones, then, each
 * named after its folder.
 */
export function machinesOfFiles(files: readonly ZoneSource[]): FileMachines {
  const said = files.map(({ name, preamble }) => machineOfPath(name) ?? machineOfPreamble(preamble));
  const isOneUnnamed = files.map(holdsOneUnnamed);
  const others = filesOfOtherValues(files, isOneUnnamed);
  const machines: FileMachine[] = files.map(({ name }, i) => {
    const unsaid = others[i]!.filter((k) => said[k] === said[i]);
    if (unsaid.length === 0) return { name: said[i]!, isShared: others[i]!.length > 0 };
    const label = labels.find((of) =>
      isLabel(
        of,
        name,
        unsaid.map((k) => files[k]!.name),
      ),
    )!(name);
    if (isOneUnnamed[i]) return { name: said[i]!, isShared: true, zone: label };
    return { name: said[i] === null ? label : `${said[i]} ${label}`, isShared: true };
  });
  const zones = new Set(machines.flatMap(({ zone }) => zone ?? []));
  // A day on which no other zone was logged has the zone of its folder, too.
  const all = machines.map((machine, i) => {
    const folder = folderOf(files[i]!.name);
    return isOneUnnamed[i] && machine.zone === undefined && zones.has(folder) ? { ...machine, zone: folder } : machine;
  });
  return { machines: all, problems: toldApart(files, others, said, all) };
}

function isLabel(of: (path: string) => string, name: string, others: readonly string[]): boolean {
  const own = of(name);
  return own !== '' && others.every((other) => looseName(of(other)) !== looseName(own));
}

function baseOf(path: string): string {
  return (path.split(/[\\/!]/).at(-1) ?? '').replace(/\.\w{1,8}$/, '');
}

function toldApart(
  files: readonly ZoneSource[],
  others: readonly (readonly number[])[],
  said: readonly (string | null)[],
  machines: readonly FileMachine[],
): ProblemNote[] {
  const guessed = files.flatMap((_, i) =>
    machines[i]!.zone === undefined && others[i]!.some((k) => said[k] === said[i]) ? [i] : [],
  );
  if (guessed.length === 0) return [];
  const first = guessed[0]!;
  const second = others[first]!.find((k) => said[k] === said[first])!;
  const names = [...new Set(guessed.map((i) => `"${machines[i]!.name}"`))];
  return [
    {
      ...{ code: 'ambiguous-layout', file: files[first]!.name, count: guessed.length },
      what: `${files[second]!.name} has the same zones with other values at the same time, so ${guessed.length} files are taken for those of ${names.length} machines, ${names.slice(0, 6).join(', ')}.`,
      todo: "If that is not right, or to name them, put each machine's files into a folder called after it, or its name into theirs (Line 1, Press 2).",
    },
  ];
}

/** One reading, and neither its column nor the file has a name of its own. */
function holdsOneUnnamed({ name, preamble, roled }: ZoneSource): boolean {
  const readings = roled.filter(({ role }) => role === 'reading');
  return readings.length === 1 && readings[0]!.rest === '' && zoneOfPreamble(preamble) === null && stemOf(name) === '';
}
