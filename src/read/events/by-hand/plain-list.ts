import { daysAbove } from './days-above.js';
import { dittoMarks } from './ditto-marks.js';
import { loneClocks } from './lone-clocks.js';
import { markedZones } from './marked-zones.js';
import type { Cells, ListSample, Mend, MendFinder } from './mend.js';
import { oddCells } from './odd-cells.js';
import { shortDates } from './short-dates.js';
import { weekDays } from './week-days.js';
import { spansInCells } from './spans-in-cells.js';

/** In this order: each sees the list as those before it leave it. */
const finders: readonly MendFinder[] = [
  oddCells,
  dittoMarks,
  markedZones,
  weekDays,
  shortDates,
  spansInCells,
  loneClocks,
  daysAbove,
];

/** A list as people keep it, made into one as a machine would write it. */
export interface PlainList {
  readonly header: Cells;
  /** The sample rows as they are then; lines that are no rows are left out, so places are not those of the sample. */
  readonly rows: readonly Cells[];
  readonly notes: readonly string[];
  /** Begins at the first row of data; the function takes all rows in their order. Null = the row was no row of data. */
  readonly begin: () => (cells: Cells) => Cells | null;
}

/** Finds what a list needs to be read as others are; a list that needs nothing comes back as it is. Never throws. */
export function plainList(sample: ListSample): PlainList {
  const mends: Mend[] = [];
  let now = sample;
  for (const find of finders) {
    const mend = find(now);
    if (!mend) continue;
    const take = mend.begin();
    now = {
      ...now,
      header: mend.header,
      rows: now.rows.flatMap((cells) => [take(cells)].filter((row) => row !== null)),
    };
    mends.push(mend);
  }
  const begin = () => {
    const steps = mends.map((mend) => mend.begin());
    return (cells: Cells): Cells | null =>
      steps.reduce<Cells | null>((row, step) => (row === null ? null : step(row)), cells);
  };
  return { header: now.header, rows: now.rows, notes: mends.map(({ note }) => note), begin };
}
