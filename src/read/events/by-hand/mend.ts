/** A row of a list as cells. */
export type Cells = readonly string[];

/** What a mend may know of a list: the names of its columns, some of its rows, and the lines above its names. */
export interface ListSample {
  readonly header: Cells;
  readonly rows: readonly Cells[];
  readonly above: readonly Cells[];
  /** Years of the temperature log, for dates that say none; empty = not known. */
  readonly log: LogDays;
}

/** First and last day of the temperature log, UTC ms; NaN = not known. */
export interface LogDays {
  readonly startMs: number;
  readonly endMs: number;
}

/** One thing that people write in their own way, made into what a machine would have written. */
export interface Mend {
  /** Names of the columns after it. */
  readonly header: Cells;
  /** What was taken how, for the notes of the file. */
  readonly note: string;
  /** Begins at the first row of data; the function takes the rows in their order. Null = the row was no row of data. */
  readonly begin: () => (cells: Cells) => Cells | null;
}

/** Looks whether a list needs the mend; null where it does not. Never throws. */
export type MendFinder = (sample: ListSample) => Mend | null;

/** The filled cells of a column, trimmed. */
export function filledCells(rows: readonly Cells[], column: number): string[] {
  return rows.map((cells) => (cells[column] ?? '').trim()).filter((cell) => cell !== '');
}

/** A column is what most of its cells are; common practice. */
export const mostOf = 0.6;

export function areMost(cells: readonly string[], test: (cell: string) => boolean): boolean {
  return cells.length > 0 && cells.filter(test).length >= mostOf * cells.length;
}
