import type { Command } from 'commander';
import { addLogOptions, toAnalyseOptions, type LogOptions } from './log-options.js';
import type { DowntimeGroup } from './downtime-text.js';

interface DowntimeOptions extends LogOptions {
  readonly by: string;
  readonly csv?: boolean;
  readonly json?: boolean;
}

/** `looselead downtime PATH...`: the manager's table, what stopped the machines and what it cost. */
export function registerDowntime(program: Command): void {
  const command = program
    .command('downtime')
    .description('show the hours and money lost to sensor and wiring faults against everything else')
    .argument('<path...>', 'log files or folders, or a saved findings.json')
    .option('--by <group>', 'zone, machine or week; by cause unless given', 'cause')
    .option('--csv', 'print it as CSV for a spreadsheet')
    .option('--json', 'print it as JSON');
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead downtime logs/ --by machine --csv > downtime.csv\n')
    .action((paths: string[], options: DowntimeOptions) => run(paths, options));
}

async function run(paths: readonly string[], options: DowntimeOptions): Promise<void> {
  const { downtimeCsv, downtimeText } = await import('./downtime-text.js');
  const by = await groupOf(options.by);
  const { downtime } = await findingsOf(paths, options);
  if (options.json) process.stdout.write(`${JSON.stringify(downtime, null, 2)}\n`);
  else if (options.csv) process.stdout.write(downtimeCsv(downtime, by));
  else process.stdout.write(downtimeText(downtime, by, process.stdout.columns ?? 80));
}

async function findingsOf(paths: readonly string[], options: LogOptions) {
  const [only] = paths;
  if (paths.length === 1 && only?.toLowerCase().endsWith('findings.json')) {
    const { readFindings } = await import('./read-findings.js');
    return readFindings(only);
  }
  const { analyse } = await import('../pipeline.js');
  return analyse([...paths], toAnalyseOptions(options));
}

async function groupOf(by: string): Promise<DowntimeGroup> {
  const { downtimeGroups } = await import('./downtime-text.js');
  const { LogProblem } = await import('../model/problem.js');
  const group = downtimeGroups.find((known) => known === by);
  if (group) return group;
  throw new LogProblem(
    'bad-argument',
    undefined,
    `--by ${by} is not known.`,
    `Give one of ${downtimeGroups.join(', ')}.`,
  );
}
