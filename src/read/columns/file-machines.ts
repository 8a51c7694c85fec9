import type { ProblemNote } from '../../model/problem.js';
import { looseName } from '../names/column-name.js';
import { folderOf, machineOfPath, machineOfPreamble, stemOf } from '../names/machine-name.js';
import type { ZoneSource } from './draft-zone.js';
import type { RoledSeries } from './roled-series.js';

export interface FileMachine {
  /** null = nothing says which. */
  readonly name: string | null;
  /** True when a file of another machine has the same names; then the name of a zone alone tells no zone. */
  readonly isShared: boolean;
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
 * the files or their folders, and this is told.
 */
export function machinesOfFiles(files: readonly ZoneSource[]): FileMachines {
  const said = files.map(({ name, preamble }) => machineOfPath(name) ?? machineOfPreamble(preamble));
  const named = files.map(namedReadings);
  const others = files.map((file, i) =>
    files.flatMap((other, k) =>
      k !== i && overlaps(file, other) && hasOtherValues(named[i]!, named[k]!, other) ? [k] : [],
    ),
  );
  const machines = files.map(({ name }, i) => {
    const unsaid = others[i]!.filter((k) => said[k] === said[i]);
    if (unsaid.length === 0) return { name: said[i]!, isShared: others[i]!.length > 0 };
    const label = labels.find((of) =>
      isLabel(
        of,
        name,
        unsaid.map((k) => files[k]!.name),
      ),
    )!(name);
    return { name: said[i] === null ? label : `${said[i]} ${label}`, isShared: true };
  });
  return { machines, problems: toldApart(files, others, said, machines) };
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
  const guessed = files.flatMap((_, i) => (others[i]!.some((k) => said[k] === said[i]) ? [i] : []));
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

function overlaps(a: ZoneSource, b: ZoneSource): boolean {
  return a.firstMs <= b.lastMs && b.firstMs <= a.lastMs;
}

/** So many values decide (own choice). */
const fewestOther = 3;
/** A value that stands between two neighbours of the other file may lie a little outside theirs, by noise (own choice). */
const outsideShare = 0.1;

type NamedReading = readonly [name: string, reading: RoledSeries];

function namedReadings({ roled }: ZoneSource): NamedReading[] {
  return roled.filter((it) => it.role === 'reading' && it.rest !== '').map((it) => [looseName(it.rest), it]);
}

/** Two files of one logger hold the same values at the same times. */
function hasOtherValues(
  readings: readonly NamedReading[],
  twinReadings: readonly NamedReading[],
  { isChangeLogged, samplingMs }: ZoneSource,
): boolean {
  const counts = { same: 0, other: 0, inside: 0, outside: 0 };
  const twins = new Map(twinReadings);
  for (const [name, reading] of readings) {
    const twin = twins.get(name);
    if (twin) compare(reading, twin, isChangeLogged ? 0 : 1.5 * samplingMs, counts);
  }
  const { same, other, inside, outside } = counts;
  if (same + other >= inside + outside) return other >= fewestOther && other > same;
  return outside >= fewestOther && outside > outsideShare * (inside + outside);
}

/** @param neighbourMs The other file's values so near to each other are neighbours; one between them should lie between theirs. */
function compare(
  { series }: RoledSeries,
  { series: twin }: RoledSeries,
  neighbourMs: number,
  counts: { same: number; other: number; inside: number; outside: number },
): void {
  const order = [...twin.clockMs.keys()]
    .filter((i) => !Number.isNaN(twin.value[i]))
    .sort((x, y) => twin.clockMs[x]! - twin.clockMs[y]!);
  const timesMs = Float64Array.from(order, (i) => twin.clockMs[i]!);
  const roundingDeg = 10 ** -Math.min(series.decimals, twin.decimals);
  series.clockMs.forEach((ms, i) => {
    const value = series.value[i]!;
    const at = firstNotBefore(timesMs, ms);
    if (Number.isNaN(value) || !(at < order.length)) return;
    const [before, here] = [order[at - 1], order[at]!];
    if (timesMs[at] === ms) return void (twin.value[here] === value ? counts.same++ : counts.other++);
    if (before === undefined || twin.stretch[before] !== twin.stretch[here]) return;
    if (twin.clockMs[here]! - twin.clockMs[before]! > neighbourMs) return;
    const [low, high] = [twin.value[before]!, twin.value[here]!].sort((x, y) => x - y);
    const isInside = value >= low! - roundingDeg && value <= high! + roundingDeg;
    if (isInside) counts.inside++;
    else counts.outside++;
  });
}

function firstNotBefore(timesMs: Float64Array, ms: number): number {
  let [low, high] = [0, timesMs.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timesMs[middle]! < ms) low = middle + 1;
    else high = middle;
  }
  return low;
}
