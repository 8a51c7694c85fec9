import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll } from 'vitest';
import { builtProgram } from '../make/built-program.js';

export const root = fileURLToPath(new URL('../../', import.meta.url));

/** What a run ended with; blanks that do not break are plain ones in what it printed. */
export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The program, built from its source for the tests of one file and run as a user runs it, from the project's folder. */
export function useProgram(env: Readonly<Record<string, string>> = {}) {
  let program: Awaited<ReturnType<typeof builtProgram>>;
  beforeAll(async () => {
    program = await builtProgram();
  });
  afterAll(() => program.remove());
  /** What follows "node". */
  const args = (...given: readonly string[]): string[] => [program.cli, ...given];
  const run = (...given: readonly string[]): Ran => {
    const options = { cwd: root, encoding: 'utf8', env: { ...process.env, ...env } } as const;
    const { status, stdout, stderr } = spawnSync(process.execPath, args(...given), options);
    return { status, stdout: stdout.replaceAll('\u00A0', ' '), stderr };
  };
  return { args, run };
}
