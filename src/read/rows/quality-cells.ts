import { cellMark, type LogFile } from '../../model/log-file.js';

/** What the quality cells of the row just read say. */
export class QualityCells {
  /** True when a quality that holds for the whole row says bad. */
  isRowBad = false;
  private readonly ofColumn: ReadonlyMap<number, number>;
  private badColumns: number[] = [];

  constructor({ columns }: Pick<LogFile, 'columns'>) {
    this.ofColumn = new Map(
      columns.flatMap(({ index, ofColumn }) => (ofColumn === undefined ? [] : [[index, ofColumn]])),
    );
  }

  startRow(): void {
    this.isRowBad = false;
    if (this.badColumns.length > 0) this.badColumns = [];
  }

  meet(column: number, isBad: boolean): void {
    const ofColumn = this.ofColumn.get(column);
    if (ofColumn === undefined) this.isRowBad = isBad;
    else if (isBad) this.badColumns.push(ofColumn);
  }

  get isAnyBad(): boolean {
    return this.isRowBad || this.badColumns.length > 0;
  }

  /** Marks what is not to be trusted in the arrays of a wide file, at the place of the row. */
  mark(values: readonly (Float64Array | null)[], marks: readonly (Uint8Array | null)[], at: number): void {
    if (this.isRowBad) for (const column of marks.keys()) markBad(marks[column] ?? null, at);
    for (const column of this.badColumns) {
      markBad(marks[column] ?? null, at);
      const number = values[column];
      if (number && !marks[column]) number[at] = NaN; // a set point or output that is not known
    }
  }
}

function markBad(marks: Uint8Array | null, at: number): void {
  if (marks && marks[at] === cellMark.number) marks[at] = cellMark.badQuality;
}
