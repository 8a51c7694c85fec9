import { Option, type Command } from 'commander';
import { addOutputOptions, printAnswer, type OutputOptions } from './output-options.js';

type Scheduler = 'cron' | 'windows';

interface WeeklyOptions extends OutputOptions {
  readonly out: string;
  readonly history: string;
  readonly for: Scheduler;
}

/**
 * `looselead weekly FOLDER`: prints what a scheduler needs to run the report every Monday. Schedulers start programs with
 * hardly any search path, so every path in it is whole.
 */
export function registerWeekly(program: Command): void {
  const command = program
    .command('weekly')
    .description('print the line that makes cron or the Windows Task Scheduler run the report every Monday')
    .argument('<folder>', 'the folder into which the controllers export')
    .option('--out <folder>', 'where findings.json and report.html go', 'reports')
    .option('--history <folder>', 'where the weeks before are kept', 'history')
    .addOption(
      new Option('--for <scheduler>', 'which scheduler')
        .choices(['cron', 'windows'])
        .default(process.platform === 'win32' ? 'windows' : 'cron'),
    );
  addOutputOptions(command, { json: 'print the words of the command as JSON', quiet: 'print the line alone' })
    .addHelpText('after', '\nExample:\n  looselead weekly logs/ --out reports --history history\n')
    .action(async (folder: string, options: WeeklyOptions) => {
      const { resolve } = await import('node:path');
      const [out, history] = [resolve(options.out), resolve(options.history)];
      const report = ['report', resolve(folder), '--out', out, '--history', history, '--fail-on', 'faulty', '--quiet'];
      const words = [process.execPath, ...process.execArgv, process.argv[1]!, ...report];
      const isCron = options.for === 'cron';
      await printAnswer(options, {
        json: () => words,
        quiet: () => `${isCron ? cronLine(words) : windowsLine(words)}\n`,
        text: () => (isCron ? cronText(words) : windowsText(words, resolve('looselead-weekly.cmd'))),
      });
      const { existsSync } = await import('node:fs');
      if (!existsSync(folder)) process.stderr.write(`There is no folder ${resolve(folder)} yet.\n`);
    });
}

/** A shell takes words of these letters as they are. */
const plainWord = /^[\w@+=:,./-]+$/u;

export function cronText(words: readonly string[]): string {
  return `Add this line with "crontab -e":\n\n${cronLine(words)}\n`;
}

/** In a crontab a per cent sign ends the line unless a backslash stands before it (crontab(5)). */
function cronLine(words: readonly string[]): string {
  const quoted = words.map((word) => (plainWord.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`));
  return `0 6 * * 1  ${quoted.join(' ').replaceAll('%', '\\%')}`;
}

/** The task runs a file of its own, since `/TR` takes 261 characters at most (from memory). */
export function windowsText(words: readonly string[], file: string): string {
  return [
    `Save these two lines as ${file}:`,
    '',
    '@echo off',
    windowsLine(words),
    '',
    'Then run once, in a command prompt:',
    '',
    `schtasks /Create /TN looselead /SC WEEKLY /D MON /ST 06:00 /TR "\\"${file}\\""`,
    '',
  ].join('\n');
}

/** In a command file a per cent sign is written twice. */
function windowsLine(words: readonly string[]): string {
  return words
    .map((word) => `"${word}"`)
    .join(' ')
    .replaceAll('%', '%%');
}
