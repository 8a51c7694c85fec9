import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, vi } from 'vitest';
import { readFindings } from '../../src/commands/read-findings.js';
import { readHistory } from '../../src/history/history-folder.js';
import { builtProgram } from '../make/built-program.js';
import { smallPlant } from '../make/small-plant.js';
import { writePlant } from '../make/write-plant.js';

// A dozen whole reports in one test; on a busy machine each takes ten times as long.
vi.setConfig({ testTimeout: 600_000, hookTimeout: 600_000 });

/** The program, built, and two folders of logs whose reports differ, in a folder that is thrown away. */
export interface Bench {
  readonly folder: string;
  readonly cli: string;
  readonly logs: readonly [string, string];
  remove(): void;
}

export async function makeBench(): Promise<Bench> {
  const program = await builtProgram();
  const folder = mkdtempSync(join(tmpdir(), 'looselead-faults-'));
  const logs = [2, 3].map((days) => {
    const path = join(folder, `logs-of-${days}-days`);
    writePlant(smallPlant({ zones: 3, days, everyS: 60 }), path);
    return path;
  }) as [string, string];
  const remove = () => {
    program.remove();
    rmSync(folder, { recursive: true });
  };
  return { folder, cli: program.cli, logs, remove };
}

/** Where a report puts everything that it can write. */
export const outputsIn = (folder: string): string[] => [
  ...['--out', join(folder, 'out'), '--csv', join(folder, 'out', 'zones.csv')],
  ...['--history', join(folder, 'history')],
];

export function run(bench: Bench, args: readonly string[], before: readonly string[] = [process.execPath]) {
  const [command, ...more] = [...before, bench.cli, ...args];
  const { status, signal, stdout, stderr } = spawnSync(command!, more, { encoding: 'utf8' });
  return { status, signal, stdout, stderr };
}

export interface Started {
  readonly child: ChildProcess;
  readonly ended: Promise<{ status: number | null; signal: NodeJS.Signals | null; stderr: string }>;
}

export function start(bench: Bench, args: readonly string[]): Started {
  const child = spawn(process.execPath, [bench.cli, ...args], { stdio: ['ignore', 'ignore', 'pipe'] });
  let stderr = '';
  child.stderr.on('data', (text: Buffer) => (stderr += text.toString()));
  const ended = new Promise<Awaited<Started['ended']>>((resolve) =>
    child.once('close', (status, signal) => resolve({ status, signal, stderr })),
  );
  return { child, ended };
}

/** One line of what, where and what to do, and no stack. */
export function expectSentence(stderr: string): void {
  expect(stderr).toMatch(/^looselead: [^\n]+\.\n$/);
  expect(stderr).not.toMatch(/\bat .*:\d+:\d+|undefined|\bE[A-Z]{4,}\b/);
}

/** Every file under a folder by its path, with what it holds. */
export function contentsOf(folder: string): Map<string, string> {
  const names = readdirSync(folder, { recursive: true }).map(String);
  return new Map(
    names
      .map((name) => join(folder, name))
      .filter((path) => statSync(path).isFile())
      .map((path) => [path, createHash('sha256').update(readFileSync(path)).digest('hex')]),
  );
}

/** All that a folder of {@link outputsIn} holds can be read to its end; there need not be anything. */
export async function expectWhole(folder: string): Promise<void> {
  const { problems } = await readHistory(join(folder, 'history'));
  expect(problems).toEqual([]);
  const names = namesIn(join(folder, 'out'));
  if (names.includes('findings.json')) await readFindings(join(folder, 'out', 'findings.json'));
  const end = (name: string): string => readFileSync(join(folder, 'out', name), 'utf8').slice(-20);
  if (names.includes('report.html')) expect(end('report.html')).toMatch(/<\/html>\s*$/);
  if (names.includes('zones.csv')) expect(end('zones.csv')).toMatch(/\r\n$/);
}

export function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

export function temporaryFiles(folder: string): string[] {
  return ['out', 'history'].flatMap((name) =>
    namesIn(join(folder, name)).filter((file) => file.startsWith('.looselead-')),
  );
}
