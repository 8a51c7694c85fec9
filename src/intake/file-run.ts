import type { SourceNote } from '../model/findings.js';
import type { LogFile } from '../model/log-file.js';
import type { ProblemNote } from '../model/problem.js';
import type { LogClock } from '../normalise/clock.js';
import type { OrderNote } from '../normalise/order-note.js';
import type { RowTally } from '../read/rows/row-tally.js';

const hourMs = 3_600_000;

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
  if (clock) all.push(...clockProblems(file, clock));
  return all;
}

function clockProblems({ name: file, order }: LogFile, clock: LogClock): ProblemNote[] {
  const { missingHourRows, unrepeatedHoursMs, fixedOffset, firstTwiceShownMs } = clock;
  const problems: ProblemNote[] = [];
  if (missingHourRows > 0)
    problems.push({
      ...{ code: 'clock-jump', file, count: missingHourRows },
      what: Number.isNaN(fixedOffset)
        ? `${rowsStand(missingHourRows)} in the hour that the clock leaves out in spring.`
        : `The logger does not follow summer time: ${rowsStand(missingHourRows)} in the hour that the clock leaves out in spring. From there on its clock is read as winter time.`,
      todo: `Say "timezone: ${winterZone(fixedOffset)}" in plant.yaml if it never does, or set the logger to follow summer time.`,
    });
  if (order === 'mixed' && !Number.isNaN(firstTwiceShownMs))
    problems.push({
      ...{ code: 'clock-jump', file },
      what: `The hour from ${clockText(Math.floor(firstTwiceShownMs / hourMs) * hourMs)} stands twice on the clock, and in a file without order nothing tells its two turns apart: all its rows are taken for the first turn, those of the second count as repeated and are left out.`,
      todo: 'Export the log sorted by time, or with times in UTC.',
    });
  // Rows without order do not show whether the clock went back.
  if (unrepeatedHoursMs.length > 0 && order !== 'mixed')
    problems.push({
      ...{ code: 'clock-jump', file, count: unrepeatedHoursMs.length },
      what: `The hour from ${clockText(unrepeatedHoursMs[0]!)} stands twice on the clock of this time zone, but only once in the log: the logger stays on winter time all year, or the second turn was not recorded.`,
      todo: 'If it stays on winter time, say a time zone without summer time in plant.yaml (such as Etc/GMT-1, which is one hour ahead of UTC); until then its summer rows are placed an hour early.',
    });
  return problems;
}

function rowsStand(count: number): string {
  return count === 1 ? 'one row stands' : `${count} rows stand`;
}

/** The signs of Etc zones are the other way round: Etc/GMT-1 is one hour ahead of UTC (IANA time zone database). */
function winterZone(offsetMinutes: number): string {
  const hours = offsetMinutes / 60;
  return Number.isInteger(hours) ? `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}` : 'Etc/GMT-1';
}

function clockText(ms: number): string {
  return new Date(ms).toISOString().slice(0, 16).replace('T', ' ');
}
