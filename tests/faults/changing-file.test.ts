import { appendFileSync, readdirSync, readFileSync, readlinkSync, renameSync, rmSync, truncateSync } from 'node:fs';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Findings } from '../../src/model/findings.js';
import { makeBench, start, type Bench } from './program.js';

let bench: Bench;
beforeAll(async () => void (bench = await makeBench()));
afterAll(() => bench.remove());

const rows = 400_000;
const row = (i: number): string =>
  `${new Date(Date.UTC(2026, 4, 4) + i * 1000).toISOString()},${(150 + (i % 7) / 10).toFixed(1)},${(160 + (i % 5) / 10).toFixed(1)}\n`;
const text = (from: number, to: number): string => Array.from({ length: to - from }, (_, i) => row(from + i)).join('');
const header = 'Time,Left jaw [degC],Right jaw [degC]\n';
let whole = '';
beforeAll(() => void (whole = header + text(0, rows)));

/** How far a process has read a file from its beginning, as the kernel tells; looks at other places do not count. */
function readBytes(pid: number, file: string): number {
  try {
    for (const descriptor of readdirSync(`/proc/${pid}/fd`)) {
      if (readlinkSync(`/proc/${pid}/fd/${descriptor}`) !== file) continue;
      return Number(/pos:\s*(\d+)/.exec(readFileSync(`/proc/${pid}/fdinfo/${descriptor}`, 'utf8'))?.[1] ?? 0);
    }
  } catch {
    // it has just been closed
  }
  return 0;
}

/** Runs a report that is held still in the middle of the log while `change` is made. */
async function reportWhile(name: string, change: (file: string) => void) {
  const folder = join(bench.folder, name);
  mkdirSync(folder);
  const file = join(folder, 'log.csv');
  writeFileSync(file, whole);
  const json = join(folder, 'findings.json');
  const { child, ended } = start(bench, [
    'report',
    folder,
    '--json',
    json,
    '--html',
    join(folder, 'r.html'),
    '--quiet',
  ]);
  let isOver = false;
  void ended.then(() => (isOver = true));
  while (!isOver && readBytes(child.pid!, file) < 1_500_000) await new Promise((resolve) => setTimeout(resolve, 1));
  child.kill('SIGSTOP');
  const heldAt = readBytes(child.pid!, file);
  expect(heldAt).toBeLessThan(whole.length);
  expect(heldAt).toBeGreaterThan(0);
  change(file);
  child.kill('SIGCONT');
  const { status, stderr } = await ended;
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const findings = JSON.parse(readFileSync(json, 'utf8')) as Findings;
  const [source] = findings.sources;
  expect(findings.sources).toHaveLength(1);
  return { heldAt, source: source!, problems: findings.problems.filter((problem) => problem.file?.includes(file)) };
}

// Whether a file is being read can be seen from outside on Linux only.
describe.skipIf(process.platform !== 'linux')('a log that changes while it is read', () => {
  test('grows: what came meanwhile is read too, and half a line is told', async () => {
    const { source, problems } = await reportWhile('grows', (file) =>
      appendFileSync(file, text(rows, rows + 500) + row(rows + 500).slice(0, 20)),
    );
    expect([source.rowsRead, source.rejectedByReason]).toEqual([rows + 500, { 'half-line': 1 }]);
    expect(problems.map(({ code }) => code)).toEqual(['half-line']);
  });

  test('is cut: what came before stays, and how much is missing is told', async () => {
    const { heldAt, source, problems } = await reportWhile('cut', (file) => truncateSync(file, 1_000_000));
    expect(source.rowsRead).toBeGreaterThan(10_000);
    expect(source.rowsRead).toBeLessThan(rows);
    expect(problems).toMatchObject([{ code: 'unreadable-file' }]);
    expect(problems[0]!.what).toMatch(new RegExp(`changed while it was read.*${whole.length} bytes.*after ${heldAt}`));
  });

  test('is replaced: the file that was begun is read to its end', async () => {
    const { source, problems } = await reportWhile('replaced', (file) => {
      const other = join(bench.folder, 'other.csv');
      writeFileSync(other, `${header}${text(0, 50)}`);
      renameSync(other, file);
    });
    expect([source.rowsRead, source.rowsRejected, problems]).toEqual([rows, 0, []]);
  });

  test('is deleted: the same', async () => {
    const { source, problems } = await reportWhile('deleted', (file) => rmSync(file));
    expect([source.rowsRead, source.rowsRejected, problems]).toEqual([rows, 0, []]);
  });
});
