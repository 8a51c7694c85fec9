import { createHash } from 'node:crypto';
import { looseName } from '../names/column-name.js';
import type { ZoneSource } from './draft-zone.js';
import type { Series } from './series.js';

/**
 * By file: the files that hold the same zones with other values at the same time, or in between. Every two kinds of
 * content over the same time are compared, so the time grows with the square of these; copies count once.
 *
 * @param isOneUnnamed By file: whether it holds one zone that nothing names; such files are compared, too.
 */
export function filesOfOtherValues(
  files: readonly ZoneSource[],
  isOneUnnamed: readonly boolean[],
): readonly (readonly number[])[] {
  const named = files.map((file, i) => namedReadings(file, isOneUnnamed[i]!));
  const keys = files.map((file, i) => contentKey(file, named[i]!));
  const kinds = [...new Map(keys.map((key, i) => [key, i])).values()];
  const otherKinds = new Map(
    kinds.map((i) => [
      keys[i]!,
      new Set(
        kinds
          .filter((k) => k !== i && overlaps(files[i]!, files[k]!))
          .filter((k) => hasOtherValues(named[i]!, named[k]!, files[k]!))
          .map((k) => keys[k]!),
      ),
    ]),
  );
  return keys.map((key) => keys.flatMap((other, k) => (otherKinds.get(key)!.has(other) ? [k] : [])));
}

function overlaps(a: ZoneSource, b: ZoneSource): boolean {
  return a.firstMs <= b.lastMs && b.firstMs <= a.lastMs;
}

/** So many values decide (own choice). */
const fewestOther = 3;
/** A value that stands between two neighbours of the other file may lie a little outside theirs, by noise (own choice). */
const outsideShare = 0.1;

interface NamedReading {
  readonly name: string;
  readonly series: Series;
  readonly known: () => KnownValues;
}

/** Places of a series that hold a value, in time order, and their times. */
interface KnownValues {
  readonly order: readonly number[];
  readonly timesMs: Float64Array;
}

function namedReadings({ roled }: ZoneSource, isOneUnnamed: boolean): NamedReading[] {
  return roled
    .filter((it) => it.role === 'reading' && (it.rest !== '' || isOneUnnamed))
    .map(({ rest, series }) => {
      let known: KnownValues | null = null; // most files lie beside no other
      return { name: looseName(rest), series, known: () => (known ??= knownValues(series)) };
    });
}

function knownValues({ clockMs, value }: Series): KnownValues {
  const order = [...clockMs.keys()].filter((i) => !Number.isNaN(value[i])).sort((x, y) => clockMs[x]! - clockMs[y]!);
  return { order, timesMs: Float64Array.from(order, (i) => clockMs[i]!) };
}

/** Copies of a file have one key: what they hold need be compared once. */
function contentKey(file: ZoneSource, readings: readonly NamedReading[]): string {
  const hash = createHash('sha256').update(
    JSON.stringify([file.firstMs, file.lastMs, file.samplingMs, file.isChangeLogged]),
  );
  for (const { name, series } of readings) {
    hash.update(JSON.stringify([name, series.decimals, series.clockMs.length]));
    for (const numbers of [series.clockMs, series.value, series.stretch]) hash.update(Float64Array.from(numbers));
  }
  return hash.digest('base64');
}

/** Two files of one logger hold the same values at the same times. */
function hasOtherValues(
  readings: readonly NamedReading[],
  twinReadings: readonly NamedReading[],
  { isChangeLogged, samplingMs }: ZoneSource,
): boolean {
  const counts = { same: 0, other: 0, inside: 0, outside: 0 };
  const twins = new Map(twinReadings.map((twin) => [twin.name, twin]));
  for (const { name, series } of readings) {
    const twin = twins.get(name);
    if (twin) compare(series, twin, isChangeLogged ? 0 : 1.5 * samplingMs, counts);
  }
  const { same, other, inside, outside } = counts;
  if (same + other >= inside + outside) return other >= fewestOther && other > same;
  return outside >= fewestOther && outside > outsideShare * (inside + outside);
}

/** @param neighbourMs The other file's values so near to each other are neighbours; one between them should lie between theirs. */
function compare(
  series: Series,
  { series: twin, known }: NamedReading,
  neighbourMs: number,
  counts: { same: number; other: number; inside: number; outside: number },
): void {
  const { order, timesMs } = known();
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
