import { CommanderError } from 'commander';
import { LogProblem } from '../model/problem.js';
import { version } from './version.js';

/**
 * Says on stderr what went wrong: a sentence for what the user gave, a stack for our own bugs.
 *
 * @returns The exit code: 0 for help and version, 2 for anything that could not run.
 */
export function reportFailure(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  if (error instanceof LogProblem) {
    process.stderr.write(`looselead: ${error.message}\n`);
    return 2;
  }
  const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
  process.stderr.write(
    `looselead ${version()}: this is a fault of the program itself. Please report it with these lines:\n${stack}\n`,
  );
  return 2;
}
