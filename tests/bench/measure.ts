import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface Usage {
  readonly cpuS: number;
  readonly peakMb: number;
}

/** A program to run: arguments of node. */
export interface Contest {
  readonly name: string;
  readonly args: readonly string[];
}

export const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
export const cli = here('../../dist/cli.js');

export const machine = (): string =>
  `${cpus()[0]?.model ?? 'unknown machine'}, node ${process.version}, ${new Date().toISOString().slice(0, 10)}`;

/** Runs a step in a folder that is thrown away. Throws where the program was not built. */
export async function inBenchFolder(step: (folder: string) => Promise<void>): Promise<void> {
  if (!existsSync(cli)) throw new Error('Run "npm run build" first.');
  const folder = mkdtempSync(join(tmpdir(), 'looselead-bench-'));
  try {
    await step(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export function reportOn(name: string, path: string, folder: string): Contest {
  return { name, args: [cli, 'report', path, '--quiet', '--out', join(folder, 'out')] };
}

/** Processor seconds and largest resident memory of one run. */
export function measure({ args }: Contest, folder: string): Usage {
  const usageFile = join(folder, 'usage.json');
  execFileSync(process.execPath, ['--import', here('usage-hook.mjs'), ...args], {
    env: { ...process.env, BENCH_USAGE: usageFile },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return JSON.parse(readFileSync(usageFile, 'utf8')) as Usage;
}
