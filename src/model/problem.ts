/** What can go wrong with input, as stable codes. Wording may improve; codes stay. */
export type ProblemCode =
  | 'bad-argument'
  | 'not-found'
  | 'unreadable-file'
  | 'binary-file'
  | 'empty-file'
  | 'unknown-layout'
  | 'ambiguous-layout'
  | 'ambiguous-time'
  | 'ambiguous-unit'
  | 'bad-row'
  | 'bad-cell'
  | 'half-line'
  | 'long-line'
  | 'too-large'
  | 'archive-entry'
  | 'clock-jump'
  | 'clock-shift'
  | 'repeated-rows'
  | 'out-of-order'
  | 'unmatched-zone'
  | 'bad-plant-file'
  | 'detector-failed'
  | 'write-failed'
  | 'bad-history'
  | 'nothing-readable';

/** Where a problem was seen; the line counts from 1 and is absent where a file has no lines. */
export interface Place {
  readonly file: string;
  readonly line?: number;
}

/** A problem as plain data, fit for findings.json. */
export interface ProblemNote {
  readonly code: ProblemCode;
  readonly file?: string;
  readonly line?: number;
  /** What is the matter, one sentence. */
  readonly what: string;
  /** What the reader can do about it, one sentence. */
  readonly todo: string;
  /** How often it was met; one note stands for all of them. */
  readonly count?: number;
}

/** A problem that stops what was being done. The command line prints it as a sentence, without a stack. */
export class LogProblem extends Error {
  override readonly name = 'LogProblem';
  readonly code: ProblemCode;
  readonly place: Place | undefined;
  readonly what: string;
  readonly todo: string;

  constructor(code: ProblemCode, place: Place | undefined, what: string, todo: string, options?: { cause?: unknown }) {
    super(`${placeText(place)}${what} ${todo}`, options);
    this.code = code;
    this.place = place;
    this.what = what;
    this.todo = todo;
  }

  toNote(): ProblemNote {
    return { code: this.code, ...this.place, what: this.what, todo: this.todo };
  }
}

/** "line2.csv:1842: ", "line2.csv: " or nothing. */
export function placeText(place: Place | undefined): string {
  if (!place) return '';
  return place.line === undefined ? `${place.file}: ` : `${place.file}:${place.line}: `;
}
