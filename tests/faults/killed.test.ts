import { mkdirSync, watch } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { expectWhole, makeBench, namesIn, outputsIn, run, start, temporaryFiles, type Bench } from './program.js';

let bench: Bench;
let folder = '';
/** How long a whole report takes here, so that the kills fall all over it. */
let wholeMs = 0;

beforeAll(async () => {
  bench = await makeBench();
  folder = join(bench.folder, 'reports');
  for (const logs of bench.logs) {
    const startMs = performance.now();
    expect(run(bench, ['report', logs, ...outputsIn(folder)]).status).toBe(0);
    wholeMs = performance.now() - startMs;
  }
});
afterAll(() => bench.remove());

/** Starts a report that replaces everything, and kills it when `moment` has come; false where it had ended before. */
async function killedAt(logs: string, moment: () => Promise<void>): Promise<boolean> {
  const { child, ended } = start(bench, ['report', logs, ...outputsIn(folder)]);
  await Promise.race([moment(), ended]);
  child.kill('SIGKILL');
  return (await ended).signal === 'SIGKILL';
}

test('killed at many moments, what was there can be read to its end', async () => {
  const wanted = 8;
  let killed = 0;
  for (let i = 0; killed < wanted && i < 4 * wanted; i++) {
    const waitMs = (wholeMs * ((i % wanted) + 0.5)) / wanted;
    const pause = () => new Promise<void>((resolve) => setTimeout(resolve, waitMs));
    const startMs = performance.now();
    if (await killedAt(bench.logs[i % 2]!, pause)) killed++;
    else wholeMs = Math.min(wholeMs, performance.now() - startMs); // the machine has less to do now than before
    await expectWhole(folder);
    expect(namesIn(join(folder, 'out'))).toEqual(expect.arrayContaining(['findings.json', 'report.html', 'zones.csv']));
  }
  expect(killed).toBe(wanted);
});

// The writing itself takes a few milliseconds, so a clock would rarely hit it: the first change in the folder is waited for.
test.each(['out', 'history'])('killed while it writes into %s; the next run clears up', async (name) => {
  const target = join(folder, name);
  mkdirSync(target, { recursive: true });
  let hits = 0;
  for (let i = 0; i < 4; i++) {
    const changed = () =>
      new Promise<void>((resolve) => {
        const watcher = watch(target, () => {
          watcher.close();
          resolve();
        });
      });
    if (await killedAt(bench.logs[i % 2]!, changed)) hits++;
    await expectWhole(folder);
  }
  expect(hits).toBeGreaterThan(0);
  for (const logs of bench.logs) expect(run(bench, ['report', logs, ...outputsIn(folder)]).status).toBe(0);
  expect(temporaryFiles(folder)).toEqual([]);
  await expectWhole(folder);
});
