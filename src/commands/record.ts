import type { Command } from 'commander';
import type { Cause } from '../model/cause.js';

interface RecordOptions {
  readonly found: string;
  readonly history: string;
  readonly machine?: string;
  readonly date?: string;
  readonly note?: string;
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `looselead record ZONE --found CAUSE --history FOLDER`: say what was found, so that verdicts can be checked. */
export function registerRecord(program: Command): void {
  program
    .command('record')
    .description('note what was found at a zone; later reports say how often verdicts proved right')
    .argument('<zone>', 'the zone as the report names it')
    .requiredOption('--found <cause>', 'sensor, wiring, input, heater, recording, or none for no fault found')
    .requiredOption('--history <folder>', 'the history folder of the reports')
    .option('--machine <name>', 'needed only where two machines have a zone of that name')
    .option('--date <date>', 'when it was found, such as 2026-03-04; now unless given')
    .option('--note <text>', 'what was done, in your own words')
    .option('--json', 'print what was noted, and how the verdicts stand, as JSON')
    .option('--quiet', 'print nothing but problems')
    .addHelpText(
      'after',
      '\nExample:\n  looselead record "Zone 3" --found wiring --history history/ --note "loose terminal"\n',
    )
    .action((zone: string, options: RecordOptions) => run(zone, options));
}

async function run(zone: string, options: RecordOptions): Promise<void> {
  const { join } = await import('node:path');
  const { readHistory } = await import('../history/history-folder.js');
  const { addToRecord, recordFileName } = await import('../history/record-file.js');
  const { trackRecord } = await import('../history/track-record.js');
  const { runs } = await readHistory(options.history);
  const earlier = runs.map(({ findings }) => findings);
  const found = await causeOf(options.found);
  const time = await timeOf(options.date);
  const entry = { zone, machine: options.machine ?? null, time, found, note: options.note ?? '' };
  const entries = await addToRecord(join(options.history, recordFileName), entry);
  const { confirmed, right } = trackRecord(entries, earlier);
  if (options.json) process.stdout.write(`${JSON.stringify({ ...entry, confirmed, right }, null, 2)}\n`);
  else if (!options.quiet) process.stdout.write(`Noted: ${zone}, ${found}. ${recordText(confirmed, right)}\n`);
  const isKnown = earlier.some(({ zones }) => zones.some((other) => other.zone === zone));
  if (!isKnown) process.stderr.write(`No report in ${options.history} has a zone of that name; check the spelling.\n`);
}

/** "Of 3 verdicts checked so far 2 were right." */
function recordText(confirmed: number, right: number): string {
  if (confirmed === 0) return 'No verdict could be checked with it yet.';
  const verdicts = confirmed === 1 ? 'the one verdict' : `${confirmed} verdicts`;
  return `Of ${verdicts} checked so far ${right} ${right === 1 ? 'was' : 'were'} right.`;
}

async function causeOf(text: string): Promise<Cause> {
  const { causes } = await import('../model/cause.js');
  const cause = causes.find((known) => known === text.toLowerCase());
  if (cause) return cause;
  throw await badArgument(`--found ${text} is not known.`, `Give one of ${causes.join(', ')}.`);
}

async function timeOf(date: string | undefined): Promise<string> {
  const timeMs = date === undefined ? Date.now() : Date.parse(date);
  if (!Number.isNaN(timeMs)) return new Date(timeMs).toISOString();
  throw await badArgument(`--date ${date} is not a date.`, 'Write it as 2026-03-04.');
}

async function badArgument(what: string, todo: string): Promise<Error> {
  const { LogProblem } = await import('../model/problem.js');
  return new LogProblem('bad-argument', undefined, what, todo);
}
