import type { Command } from 'commander';
import { placeText, type ProblemNote } from '../../model/problem.js';
import { addOutputOptions, printAnswer, type OutputOptions } from '../output-options.js';
import type { TypedFinding } from './record-entry.js';
import { standardOutput } from '../terminal/colour.js';

interface RecordOptions extends OutputOptions, Omit<TypedFinding, 'zone'> {
  readonly history: string;
}

/** `looselead record ZONE --found CAUSE --history FOLDER`: say what was found, so that verdicts can be checked. */
export function registerRecord(program: Command): void {
  const command = program
    .command('record')
    .description('note what was found at a zone, so that later reports learn from it; without a zone, list the notes')
    .argument('[zone]', 'the zone as the report names it')
    .requiredOption('--history <folder>', 'the history folder of the reports')
    .option('--found <cause>', 'sensor, wiring, input, heater, recording, or none for no fault found')
    .option('--machine <name>', 'needed only where two machines have a zone of that name')
    .option('--date <date>', 'when it was found, such as 2026-03-04; now unless given')
    .option('--note <text>', 'what was done, in your own words');
  addOutputOptions(command, {
    json: 'print what was noted, and how the verdicts stand, as JSON',
    quiet: 'print nothing but problems',
  })
    .addHelpText(
      'after',
      '\nExamples:\n  looselead record "Zone 3" --found wiring --history history/ --note "loose terminal"\n  looselead record --history history/\n',
    )
    .action((zone: string | undefined, options: RecordOptions) =>
      zone === undefined ? list(options) : add({ ...options, zone }),
    );
}

async function add(options: RecordOptions & TypedFinding): Promise<void> {
  const { typedEntry } = await import('./record-entry.js');
  const { addToRecord } = await import('../../history/record-file.js');
  const { isSameNote } = await import('../../history/distinct-findings.js');
  const { lookAtRecord } = await import('./record-look.js');
  const { entryZone, recordText } = await import('./record-text.js');
  const before = await lookAtRecord(options.history);
  const entry = typedEntry(options, before.plant, Date.now());
  const same = before.entries.find((other) => isSameNote(other, entry, before.plant.timezone));
  if (!same) await addToRecord(before.file, entry);
  const { track, problems } = same ? before : await lookAtRecord(options.history);
  const { confirmed, right } = track;
  const said = `${entryZone(entry)}, ${entry.found}`;
  await printAnswer(options, {
    json: () => ({ ...entry, isNew: !same, confirmed, right }),
    quiet: () => '',
    text: () =>
      same
        ? `Noted before, in line ${same.place?.line}: ${said}. One repair counts once, so nothing was added.\n`
        : `Noted: ${said}. ${recordText(track)}\n`,
  });
  tell(problems);
  if (before.plant.zones.length === 0) {
    process.stderr.write(
      `No report is kept in ${options.history} yet, so the name of the zone could not be checked.\n`,
    );
  }
}

async function list(options: RecordOptions): Promise<void> {
  const { LogProblem } = await import('../../model/problem.js');
  const { lookAtRecord } = await import('./record-look.js');
  const { recordList } = await import('./record-text.js');
  if (options.found !== undefined) {
    throw new LogProblem('bad-argument', undefined, 'The zone is missing.', 'Name it before --found.');
  }
  const { entries, track, file, plant, problems } = await lookAtRecord(options.history);
  await printAnswer(options, {
    json: () => ({ entries, confirmed: track.confirmed, right: track.right }),
    quiet: () => '',
    text: () => recordList(entries, { track, file, timezone: plant.timezone, width: standardOutput().columns }),
  });
  tell(problems);
}

function tell(problems: readonly ProblemNote[]): void {
  for (const { file, line, what, todo } of problems) {
    const place = file === undefined ? undefined : { file, ...(line === undefined ? {} : { line }) };
    process.stderr.write(`${placeText(place)}${what} ${todo}\n`);
  }
}
