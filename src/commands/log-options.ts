import type { Command } from 'commander';
import { LogProblem } from '../model/problem.js';
import { isTimeZone } from '../model/time-zone.js';
import type { AnalyseOptions } from '../pipeline.js';

/** Options that every command which reads logs takes. */
export interface LogOptions {
  readonly plant?: string;
  readonly timezone?: string;
  readonly unit?: string;
  readonly dates?: string;
  readonly names?: string;
  readonly hold?: string;
}

export function addLogOptions(command: Command): Command {
  return command
    .option('--plant <file>', "plant.yaml to use (a folder's own is used by itself)")
    .option('--timezone <name>', "the log's clock, such as Europe/Oslo, where the log does not say")
    .option('--unit <unit>', 'degC, degF or K, where the log does not say')
    .option('--dates <order>', 'day-first or month-first, where nothing in the log decides')
    .option('--names <list>', 'names of the columns of a file without a header, parted by commas')
    .option('--hold <minutes>', 'how long a value holds in a log that writes changes only');
}

/** The given options only, so that an absent one stays absent. */
export function toAnalyseOptions({ plant, timezone, unit, dates, names, hold }: LogOptions): AnalyseOptions {
  return {
    ...(plant === undefined ? {} : { plant }),
    ...(timezone === undefined ? {} : { timezone: zoneOf(timezone) }),
    ...(unit === undefined ? {} : { unit: oneOf('--unit', unit, ['degC', 'degF', 'K']) }),
    ...(dates === undefined ? {} : { dates: oneOf('--dates', dates, ['day-first', 'month-first']) }),
    ...(names === undefined ? {} : { names: names.split(',').map((name) => name.trim()) }),
    ...(hold === undefined ? {} : { holdMinutes: minutesOf(hold) }),
  };
}

/** @throws LogProblem 'bad-argument' for anything but one of the words. */
function oneOf<const Word extends string>(option: string, given: string, words: readonly Word[]): Word {
  const word = words.find((it) => it === given);
  if (word !== undefined) return word;
  const what = `"${option} ${given}" is not known.`;
  throw new LogProblem('bad-argument', undefined, what, `Give ${words.slice(0, -1).join(', ')} or ${words.at(-1)!}.`);
}

/** @throws LogProblem 'bad-argument' for a name that is no time zone. */
function zoneOf(name: string): string {
  if (isTimeZone(name)) return name;
  const what = `"--timezone ${name}" is not a time zone.`;
  throw new LogProblem('bad-argument', undefined, what, 'Give a name such as Europe/Oslo or UTC.');
}

/** @throws LogProblem 'bad-argument' for anything but a number above 0. */
function minutesOf(text: string): number {
  const minutes = Number(text);
  if (minutes > 0 && Number.isFinite(minutes)) return minutes;
  throw new LogProblem(
    'bad-argument',
    undefined,
    `"--hold ${text}" is no time.`,
    'Give minutes above 0, such as --hold 30.',
  );
}
