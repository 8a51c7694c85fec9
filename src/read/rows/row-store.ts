import { cellMark } from '../../model/log-file.js';
import { flagOfNumber } from './flag-cell.js';
import type { TextValue } from './odd-cells.js';
import { act, type RowPlan } from './row-plan.js';

/** Where the cells of a batch of rows go: numbers, and marks beside those that are none. `at` is the place of the row. */
export class RowStore {
  readonly values: readonly (Float64Array | null)[];
  readonly marks: readonly (Uint8Array | null)[];
  /** True when a mark other than 0 was written since it was last cleared. */
  hasMarks = false;
  /** A text that is no number stands in a column of numbers: whether the row is one of words, its cells together tell. */
  hasText = false;
  /** Running state that the text of a value cell says; NaN = none. For tags of running machines. */
  runningOfText = NaN;
  /** The same for tags of alarm flags. */
  flagOfText = NaN;

  /** @param hasStateText Whether texts of value cells may be running states or flags. */
  constructor(
    private readonly plan: RowPlan,
    private readonly hasStateText: boolean,
  ) {
    this.values = plan.values;
    this.marks = plan.marks;
  }

  startRow(): void {
    this.hasText = false;
    this.runningOfText = NaN;
    this.flagOfText = NaN;
  }

  /** Forgets the marks of a row that is read again or left out. */
  clearRow(at: number): void {
    if (this.hasMarks) for (const marks of this.marks) if (marks) marks[at] = 0;
  }

  /** Forgets all marks, for the next batch. */
  clearMarks(): void {
    if (this.hasMarks) for (const marks of this.marks) marks?.fill(0);
    this.hasMarks = false;
  }

  /** Puts a number into column `c`, as a state where the column is one of states. */
  putNumber(c: number, at: number, number: number): void {
    const { actions, numbers, firstPlace, above } = this.plan;
    const place = firstPlace[c]! + at;
    if (actions[c] === act.running) numbers[place] = number > above[c]! ? 1 : 0;
    else if (actions[c] === act.flag) numbers[place] = flagOfNumber(number);
    else numbers[place] = number;
  }

  /** Puts what a text says into column `c`. */
  putText(c: number, at: number, { value, mark, running, flag }: TextValue): void {
    const { actions, numbers, firstPlace } = this.plan;
    const place = firstPlace[c]! + at;
    if (actions[c] === act.running && mark !== cellMark.number) numbers[place] = running;
    else if (actions[c] === act.flag) numbers[place] = flag;
    else this.putNumber(c, at, value);
    if (actions[c] !== act.number) return;
    if (mark === cellMark.otherText) this.hasText = true;
    if (this.hasStateText) [this.runningOfText, this.flagOfText] = [running, flag];
    const marks = this.marks[c];
    if (!marks || mark === cellMark.number) return;
    marks[at] = mark;
    this.hasMarks = true;
  }
}
