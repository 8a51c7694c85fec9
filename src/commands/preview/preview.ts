import type { Command } from 'commander';
import { addLogOptions, toAnalyseOptions, type LogOptions } from '../log-options.js';
import { addOutputOptions, printAnswer, type OutputOptions } from '../output-options.js';
import { standardOutput } from '../terminal/colour.js';

interface PreviewOptions extends LogOptions, OutputOptions {
  readonly writePlant?: string | boolean;
}

/** `looselead preview PATH...`: what each file was taken for, before anything is judged. */
export function registerPreview(program: Command): void {
  const command = program
    .command('preview')
    .description('show what each log was taken for, which zones it holds and what is missing')
    .argument('<path...>', 'log files or folders')
    .option('--write-plant [file]', 'write a plant.yaml with the zones found, to correct by hand');
  addOutputOptions(command, { json: 'print it as JSON', quiet: 'print the counts only, on one line' });
  addLogOptions(command)
    .addHelpText('after', '\nExample:\n  looselead preview logs/ --write-plant logs/plant.yaml\n')
    .action((paths: string[], options: PreviewOptions) => run(paths, options));
}

async function run(paths: readonly string[], options: PreviewOptions): Promise<void> {
  const { lookAt } = await import('./preview-facts.js');
  const preview = await lookAt(paths, toAnalyseOptions(options));
  if (options.writePlant) await writePlant(preview.plantText, options.writePlant);
  const { previewLine, previewText } = await import('./preview-text.js');
  await printAnswer(options, {
    json: () => ({ ...preview, plantText: undefined }),
    quiet: () => previewLine(preview),
    text: () => previewText(preview, standardOutput().columns),
  });
}

async function writePlant(text: string, given: string | boolean): Promise<void> {
  const { access } = await import('node:fs/promises');
  const { writeWhole } = await import('../../files/write-whole.js');
  const { LogProblem } = await import('../../model/problem.js');
  const file = typeof given === 'string' ? given : 'plant.yaml';
  const isThere = await access(file).then(
    () => true,
    () => false,
  );
  if (isThere)
    throw new LogProblem(
      'write-failed',
      { file },
      'There is already a plant file, and it may hold work done by hand.',
      'Name another file with --write-plant FILE, or move the old one away.',
    );
  await writeWhole({ file, content: text });
  process.stderr.write(`Wrote ${file}. Correct it by hand; every key but a zone's name may be left out.\n`);
}
