import { LogProblem, type ProblemNote } from '../../model/problem.js';
import type { FileShape } from '../layout/file-shape.js';
import type { TextHead, TextRef } from '../sources/text-source.js';

export function longFirstLine({ name }: TextRef, { longLineBytes }: TextHead): ProblemNote {
  return {
    ...{ code: 'long-line', file: name, line: 1 },
    what: `The first line is ${millions(longLineBytes)} characters long, and no header or row is; the table was looked for behind it.`,
    todo: 'Open the file in a text editor and delete that line if it is not part of the log, or export it again.',
  };
}

export function oneLine({ name }: TextRef, { longLineBytes, encoding }: TextHead): LogProblem {
  return new LogProblem(
    'long-line',
    { file: name, line: 1 },
    `The whole file is one line of ${millions(longLineBytes)} characters (${encoding}), so it has no rows.`,
    'Export it again with a line end behind every row; this file was left out.',
  );
}

function millions(count: number): string {
  return `${(count / 1e6).toFixed(1)} million`;
}

export function binaryProblem(ref: TextRef): LogProblem {
  return new LogProblem(
    'binary-file',
    { file: ref.name },
    'The file is not text: it holds many control characters.',
    'Export the log as CSV, .xlsx or Parquet; this file was left out.',
  );
}

export function noHeader(file: string): ProblemNote {
  return {
    ...{
      code: 'unknown-layout',
      file,
      line: 1,
      what: 'The file has no header, so its columns are called by their number.',
    },
    todo: 'Say what they are with "reading", "setpoint" and "output" in plant.yaml, or give their names with --names.',
  };
}

/** Names one place off would make a set point a reading, so none is taken. */
export function otherCount(file: string, names: readonly string[], columnCount: number): ProblemNote {
  return {
    ...{
      code: 'bad-argument',
      file,
      line: 1,
      what: `The file has no header and ${columnCount} columns, but --names gives ${names.length} names, so none was taken.`,
    },
    todo: 'Give one name for each column, the time among them, in the order of the file.',
  };
}

export function undecidedDates(file: string, shape: FileShape): ProblemNote {
  return {
    ...{
      code: 'ambiguous-time',
      file,
      line: shape.firstDataLine,
      what: `Day or month first? In column "${shape.header[shape.timeColumn]}" ${shape.time.why}.`,
    },
    todo: 'If that is wrong, say "dates: month-first" or "dates: day-first" in plant.yaml, or use the option --dates.',
  };
}

export function withoutStart(file: string, { header, timeColumn, firstDataLine, time }: FileShape): ProblemNote {
  return {
    ...{ code: 'ambiguous-time', file, line: firstDataLine },
    what: `Column "${header[timeColumn]!}" holds ${time.why}, neither above the rows nor in the file's name. It is counted from 1970-01-01 00:00, so nothing can be held against an alarm log or another file.`,
    todo: 'Write a line above the names of the columns that says it, such as "Start: 2026-03-02 06:00:00", or put it into the file\'s name (log_2026-03-02_06-00-00.csv).',
  };
}
