import type { Command } from 'commander';

/** How a command answers: both words mean the same on every command. */
export interface OutputOptions {
  readonly json?: boolean;
  readonly quiet?: boolean;
}

/** `--json` and `--quiet` for a command that answers on standard output, and what each gives there. */
export function addOutputOptions(command: Command, gives: { readonly json: string; readonly quiet: string }): Command {
  return addQuietOption(command.option('--json', gives.json), gives.quiet);
}

/** `--quiet` alone, for a command whose answer is files. */
export function addQuietOption(command: Command, gives: string): Command {
  return command.option('--quiet', gives);
}

/** One answer in its three forms; only the form asked for is made. `quiet` is one line, or nothing at all. */
export interface AnswerForms {
  json(): unknown;
  quiet(): string | Promise<string>;
  text(): string | Promise<string>;
}

/** Prints the form asked for; JSON wins, since a program reads it. */
export async function printAnswer({ json, quiet }: OutputOptions, answer: AnswerForms): Promise<void> {
  if (json) process.stdout.write(`${JSON.stringify(answer.json(), null, 2)}\n`);
  else process.stdout.write(await (quiet ? answer.quiet() : answer.text()));
}
