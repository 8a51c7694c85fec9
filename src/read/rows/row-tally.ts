import type { ProblemNote } from '../../model/problem.js';

/** Why a row is left out, as a stable word; the report prints the sentence. */
export const rejectReasons = {
  'bad-time': 'the time cannot be read',
  'short-row': 'there are fewer cells than columns',
  'long-row': 'there are more cells than columns',
  'blank-row': 'all cells are empty',
  'repeated-header': 'the header stands again inside the file',
  comment: 'they are comments',
  'half-line': 'the last line is not finished; the file may still be being written',
  'long-line': 'the line is longer than a megabyte',
  'open-quote': 'a quote is opened and never closed',
  'text-row': 'words stand where its numbers belong',
  'nul-bytes': 'NUL bytes stand in the line',
  'bad-quotes': 'the quotes do not pair',
  'bad-json': 'they are no whole objects of JSON',
  'unknown-tag': 'the tag belongs to no zone known from the rest of the file',
  'no-tag': 'the tag is empty',
  'far-time': 'the time is far from the rest of the file',
  'unset-clock': 'the clock had not been set: the time is where clocks begin to count',
} as const;

export type RejectReason = keyof typeof rejectReasons;

export interface RejectExample {
  readonly line: number;
  readonly reason: RejectReason;
  /** Beginning of the row as it stands. */
  readonly text: string;
}

const mostExamples = 3;
/** Letters of a row that is shown. */
export const longestExample = 120;

/** Counts rows read and left out, by reason, and keeps the first few of each. */
export class RowTally {
  rowsRead = 0;
  rowsRejected = 0;
  readonly byReason = new Map<RejectReason, number>();
  readonly examples: RejectExample[] = [];

  reject(line: number, reason: RejectReason, text: string): void {
    const seen = this.byReason.get(reason) ?? 0;
    this.rowsRejected++;
    this.byReason.set(reason, seen + 1);
    if (seen < mostExamples)
      this.examples.push({ line, reason, text: text.replace(/[\x00-\x08]+/g, '␀').slice(0, longestExample) });
  }

  /** The first row of each reason. */
  firstOfEach(): RejectExample[] {
    return this.examples.filter(({ reason }, i, all) => all.findIndex((other) => other.reason === reason) === i);
  }

  /** One note per reason, with the place of the first row. */
  toProblems(file: string): ProblemNote[] {
    return [...this.byReason].map(([reason, count]) => {
      const first = this.examples.find((example) => example.reason === reason);
      const code = codes[reason] ?? 'bad-row';
      const shown = first && first.text !== '' ? ` (the first: "${first.text}")` : '';
      return {
        ...{ code, file, count, ...(first ? { line: first.line } : {}) },
        what: `${count === 1 ? 'One row was' : `${count} rows were`} left out because ${rejectReasons[reason]}${shown}.`,
        todo: todoOf(reason),
      };
    });
  }
}

const codes: Partial<Record<RejectReason, ProblemNote['code']>> = {
  'half-line': 'half-line',
  'long-line': 'long-line',
  'far-time': 'clock-jump',
  'unset-clock': 'clock-jump',
};

function todoOf(reason: RejectReason): string {
  if (reason === 'half-line') return 'Read the file again when it is complete, if that row matters.';
  if (reason === 'unknown-tag') return 'Name its column in plant.yaml if it belongs to a zone.';
  if (reason === 'far-time')
    return "Correct the year in those lines if they matter, and look after the logger's clock.";
  if (reason === 'unset-clock') return 'Set the clock of the logger; those rows cannot be placed in time.';
  if (reason === 'blank-row' || reason === 'repeated-header' || reason === 'comment')
    return 'Nothing needs to be done.';
  return 'Correct those lines if they matter; all other rows were read.';
}
