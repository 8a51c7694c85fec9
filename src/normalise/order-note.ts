import type { ProblemNote } from '../model/problem.js';

const hourMs = 3_600_000;

/** Counts what was wrong with the times of one file; the rows themselves are read. */
export class OrderNote {
  /** Rows at a time that already stands. */
  repeated = 0;
  /** Those of them that say another value than the one that stands. */
  otherValues = 0;
  /** Rows earlier than what was already passed on. */
  older = 0;
  private backSteps = 0;
  /** @param timezone The time zone given for the log's clock; null = none. */
  constructor(private readonly timezone: string | null = null) {}

  private firstBack: { line: number; fromMs: number; toMs: number } | null = null;

  /** A row that stands earlier than the one before it. */
  back(line: number, fromMs: number, toMs: number): void {
    this.backSteps++;
    this.firstBack ??= { line, fromMs, toMs };
  }

  /** Sentences for what happened; none for a file in good order. */
  toProblems(file: string): ProblemNote[] {
    const problems: ProblemNote[] = [];
    if (this.firstBack) problems.push(this.backProblem(file, this.firstBack));
    if (this.repeated > 0)
      problems.push({
        ...{ code: 'repeated-rows', file, count: this.repeated },
        ...this.repeatedText(),
      });
    if (this.older > 0)
      problems.push({
        ...{ code: 'out-of-order', file, count: this.older },
        what: `${countText(this.older)} too late: rows of later times had already been read.`,
        todo: 'They were left out; export the log sorted by time if they matter.',
      });
    return problems;
  }

  private repeatedText(): Pick<ProblemNote, 'what' | 'todo'> {
    const what = `${countText(this.repeated)} at a time that had already been read, here or in another file.`;
    if (this.otherValues * 2 <= this.repeated)
      return { what, todo: 'The first is kept; nothing needs to be done for files that overlap.' };
    // The clock that was put back is told by itself.
    return {
      what: `${what} Most of them say other values: rows of several zones or machines may stand in one file, and nothing that was understood tells them apart.`,
      todo: 'Call the column that tells them apart "Zone" or "Machine", or export a file for each; only the first row of each time was read.',
    };
  }

  private backProblem(
    file: string,
    { line, fromMs, toMs }: { line: number; fromMs: number; toMs: number },
  ): ProblemNote {
    const minutes = Math.round((fromMs - toMs) / 6000) / 10;
    // An hour back, less the step between two rows, is what the end of summer time looks like.
    const isHour = Math.abs(fromMs - toMs - hourMs) <= 0.2 * hourMs;
    const often = this.backSteps > 1 ? ` It happens ${this.backSteps} times.` : '';
    return {
      ...{ code: 'clock-jump', file, line, count: this.backSteps },
      what: `The clock goes back by ${minutes} min here, from ${clockText(fromMs)} to ${clockText(toMs)}${isHour ? ', as at the end of summer time' : ''}.${often}`,
      todo: isHour ? this.todoOfHour() : 'Rows that stand twice are left out; check the clock of the logger.',
    };
  }

  private todoOfHour(): string {
    return this.timezone === null
      ? 'Say "timezone" in plant.yaml, then the repeated hour is read as it was; without it the rows that repeat are left out.'
      : `${this.timezone}, the time zone given, does not put its clock back then: correct it if the logger is elsewhere; the rows that repeat are left out.`;
  }
}

function countText(count: number): string {
  return count === 1 ? 'One row stands' : `${count} rows stand`;
}

function clockText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 19).replace('T', ' ');
}
