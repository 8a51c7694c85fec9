import type { Command } from 'commander';
import type { AnalyseOptions } from '../pipeline.js';

/** Options that every command which reads logs takes. */
export interface LogOptions {
  readonly plant?: string;
  readonly timezone?: string;
  readonly unit?: 'degC' | 'degF' | 'K';
  readonly dates?: 'day-first' | 'month-first';
}

export function addLogOptions(command: Command): Command {
  return command
    .option('--plant <file>', "plant.yaml to use (a folder's own is used by itself)")
    .option('--timezone <name>', "the log's clock, such as Europe/Oslo, where the log does not say")
    .option('--unit <unit>', 'degC, degF or K, where the log does not say')
    .option('--dates <order>', 'day-first or month-first, where nothing in the log decides');
}

/** The given options only, so that an absent one stays absent. */
export function toAnalyseOptions({ plant, timezone, unit, dates }: LogOptions): AnalyseOptions {
  return {
    ...(plant === undefined ? {} : { plant }),
    ...(timezone === undefined ? {} : { timezone }),
    ...(unit === undefined ? {} : { unit }),
    ...(dates === undefined ? {} : { dates }),
  };
}
