import { packColumn, unpackColumn, type PackedColumn } from './pack.js';

/** Something with a beginning, an end and a few words, as the charts use it. */
export interface Mark {
  readonly fromMs: number;
  readonly toMs: number;
  readonly says: string;
}

/** Marks as columns: seconds from one to the next, seconds long, and which of the texts; each text stands once. */
export interface PackedMarks {
  readonly length: number;
  readonly texts: readonly string[];
  readonly fromMs: PackedColumn | null;
  readonly longMs: PackedColumn | null;
  readonly text: PackedColumn | null;
}

const perSecond = 1 / 1000;

export function packMarks(marks: readonly Mark[]): PackedMarks {
  const texts = [...new Set(marks.map(({ says }) => says))];
  return {
    length: marks.length,
    texts,
    fromMs: packColumn(
      marks.map(({ fromMs }) => fromMs),
      perSecond,
    ),
    longMs: packColumn(
      marks.map(({ fromMs, toMs }) => toMs - fromMs),
      perSecond,
    ),
    text: packColumn(
      marks.map(({ says }) => texts.indexOf(says)),
      1,
    ),
  };
}

/** The marks again, times rounded to whole seconds. */
export function unpackMarks({ length, texts, fromMs, longMs, text }: PackedMarks): readonly Mark[] {
  const [from, long, index] = [fromMs, longMs, text].map((column) => unpackColumn(column, length));
  return Array.from({ length }, (_, i) => ({
    fromMs: from![i] ?? NaN,
    toMs: (from![i] ?? NaN) + (long![i] ?? 0),
    says: texts[index![i] ?? 0] ?? '',
  }));
}

/** Points in time with some numbers each, as columns. */
export interface PackedPoints<Name extends string> {
  readonly length: number;
  readonly timeMs: PackedColumn | null;
  readonly columns: Readonly<Record<Name, PackedColumn | null>>;
}

export type Point<Name extends string> = Readonly<Record<Name | 'timeMs', number>>;

/** Two decimals are kept, as the findings have them. */
const hundredths = 100;

export function packPoints<Name extends string>(
  points: readonly Point<Name>[],
  names: readonly Name[],
): PackedPoints<Name> {
  const columns = names.map((name) => [
    name,
    packColumn(
      points.map((point) => point[name]),
      hundredths,
    ),
  ]);
  const timeMs = packColumn(
    points.map((point) => point.timeMs),
    perSecond,
  );
  return { length: points.length, timeMs, columns: Object.fromEntries(columns) as PackedPoints<Name>['columns'] };
}

export function unpackPoints<Name extends string>({
  length,
  timeMs,
  columns,
}: PackedPoints<Name>): readonly Point<Name>[] {
  const time = unpackColumn(timeMs, length);
  const unpacked = Object.entries<PackedColumn | null>(columns).map(
    ([name, column]) => [name, unpackColumn(column, length)] as const,
  );
  return Array.from(
    { length },
    (_, i) =>
      Object.fromEntries([
        ['timeMs', time[i] ?? NaN],
        ...unpacked.map(([name, column]) => [name, column[i] ?? NaN]),
      ]) as Point<Name>,
  );
}
