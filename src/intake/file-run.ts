import type { SourceNote } from '../model/findings.js';
import type { LogFile } from '../model/log-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { LogClock } from '../normalise/clock.js';
import type { OrderNote } from '../normalise/order-note.js';
import type { RowTally } from '../read/row-tally.js';

/** One file while it is read, and what is counted on the way. */
export interface FileRun {
  readonly file: LogFile;
  readonly tally: RowTally;
  readonly order: OrderNote;
  readonly problems: ProblemNote[];
  /** null = the log's clock is UTC. */
  readonly clock: LogClock | null;
}

/** What was read of a temperature log and what was left out, for the findings. */
export function toSource({ file, tally, order }: FileRun): SourceNote {
  const rejected: Record<string, number> = Object.fromEntries(tally.byReason);
  if (order.repeated > 0) rejected['repeated'] = order.repeated;
  if (order.older > 0) rejected['older'] = order.older;
  return {
    ...{ file: file.name, kind: 'temperature', layout: file.layoutText, rowsRead: tally.rowsRead },
    ...{
      rowsRejected: tally.rowsRejected + order.repeated + order.older,
      rejectedByReason: rejected,
      ...(tally.examples.length === 0 ? {} : { rejectedExamples: tally.firstOfEach() }),
      notes: file.notes,
    },
  };
}

/** What went wrong with it, rows left out first told by the tally. */
export function problemsOf({ file, tally, order, problems, clock }: FileRun): ProblemNote[] {
  const all = [...problems, ...tally.toProblems(file.name), ...order.toProblems(file.name)];
  if (clock && clock.missingHourRows > 0)
    all.push({
      ...{ code: 'clock-jump', file: file.name, count: clock.missingHourRows },
      what: `${clock.missingHourRows} rows stand in the hour that the clock leaves out in spring: the logger does not follow summer time.`,
      todo: 'Say a time zone without summer time (such as Etc/GMT-1) in plant.yaml, or correct the logger.',
    });
  return all;
}
