import type { Command } from 'commander';
import { addLogOptions, toAnalyseOptions, type LogOptions } from '../log-options.js';
import type { DowntimeGroup } from './downtime-text.js';
import { addOutputOptions, printAnswer, type OutputOptions } from '../output-options.js';
import { readOrAnalyse } from '../read-findings.js';
import { standardOutput } from '../terminal/colour.js';

interface DowntimeOptions extends LogOptions, OutputOptions {
  readonly by: string;
  readonly csv?: boolean;
}

/** `looselead downtime PATH...`: the manager's table, what stopped the machines and what it cost. */
export function registerDowntime(program: Command): void {
  const command = program
    .command('downtime')
    .description('show the hours and money lost to sensor and wiring faults against everything else')
    .argument('<path...>', 'log files or folders, or a saved findings.json')
    .option('--by <group>', 'zone, machine or week; by cause unless given', 'cause')
    .option('--csv', 'print it as CSV for a spreadsheet');
  addOutputOptions(command, { json: 'print all groups as JSON', quiet: 'print the totals only, on one line' });
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead downtime logs/ --by machine --csv > downtime.csv\n')
    .action((paths: string[], options: DowntimeOptions) => run(paths, options));
}

async function run(paths: readonly string[], options: DowntimeOptions): Promise<void> {
  const { downtimeCsv, downtimeLine, downtimeText } = await import('./downtime-text.js');
  const by = await groupOf(options.by);
  const { downtime } = await readOrAnalyse(paths, toAnalyseOptions(options));
  await printAnswer(options, {
    json: () => downtime,
    quiet: () => downtimeLine(downtime),
    text: () => (options.csv ? downtimeCsv(downtime, by) : downtimeText(downtime, by, standardOutput().columns)),
  });
}

async function groupOf(by: string): Promise<DowntimeGroup> {
  const { downtimeGroups } = await import('./downtime-text.js');
  const { LogProblem } = await import('../../model/problem.js');
  const group = downtimeGroups.find((known) => known === by);
  if (group) return group;
  throw new LogProblem(
    'bad-argument',
    undefined,
    `--by ${by} is not known.`,
    `Give one of ${downtimeGroups.join(', ')}.`,
  );
}
