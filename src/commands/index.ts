import type { Command } from 'commander';
import { registerCompletion } from './completion.js';
import { registerDowntime } from './downtime/downtime.js';
import { registerOhms } from './ohms/ohms.js';
import { registerPreview } from './preview/preview.js';
import { registerRecord } from './record/record.js';
import { registerReport } from './report/report.js';
import type { RunResult } from './run-result.js';
import { version } from './version.js';
import { registerWeekly } from './weekly.js';
import { registerZone } from './zone/zone.js';

/** Hangs every command on the program. Each command loads its heavy parts only when it runs. */
export function registerCommands(program: Command, result: RunResult): void {
  program
    .description(
      'Reads heater-zone temperature and alarm logs and tells which sensors probably failed, which faults look like wiring, and what to measure first.',
    )
    .version(version())
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'looselead: ')) })
    .configureHelp({ sortSubcommands: false })
    .addHelpText('after', '\nExample:\n  looselead report logs/\n')
    .allowExcessArguments()
    .action(async () => {
      const [wanted] = program.args;
      if (wanted !== undefined) throw await noSuchCommand(program, wanted);
      process.stdout.write('Try first:  looselead report FOLDER     (a folder with temperature and alarm logs)\n');
      process.stdout.write('All commands:  looselead --help\n');
    });
  registerReport(program, result);
  registerPreview(program);
  registerZone(program);
  registerDowntime(program);
  registerRecord(program);
  registerWeekly(program);
  registerOhms(program);
  registerCompletion(program);
  for (const command of program.commands) {
    command.showHelpAfterError(`"looselead ${command.name()} --help" tells its options and an example.`);
  }
  program.showHelpAfterError('"looselead --help" lists all commands.');
}

/** Without a command of that name the words after it are nothing; the nearest name is. */
async function noSuchCommand(program: Command, wanted: string): Promise<Error> {
  const { LogProblem } = await import('../model/problem.js');
  const { lettersApart } = await import('./zone/zone-find.js');
  const { safeText } = await import('./terminal/text-width.js');
  const [nearest] = program.commands
    .map((command) => command.name())
    .sort((a, b) => lettersApart(a, wanted) - lettersApart(b, wanted));
  return new LogProblem(
    'bad-argument',
    undefined,
    `There is no command "${safeText(wanted)}".`,
    `Did you mean "looselead ${nearest}"? "looselead --help" lists them all.`,
  );
}
