import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readHistory } from '../../src/history/history-folder.js';
import {
  contentsOf,
  expectSentence,
  expectWhole,
  makeBench,
  outputsIn,
  run,
  start,
  temporaryFiles,
} from './program.js';
import type { Bench } from './program.js';

let bench: Bench;
beforeAll(async () => void (bench = await makeBench()));
afterAll(() => bench.remove());

test('four reports at once into the same folders all run, and leave one of each whole', async () => {
  const folder = join(bench.folder, 'shared');
  const started = [0, 1, 0, 1].map((i) => start(bench, ['report', bench.logs[i]!, ...outputsIn(folder), '--quiet']));
  for (const { ended } of started) expect(await ended).toEqual({ status: 0, signal: null, stderr: '' });
  await expectWhole(folder);
  expect((await readHistory(join(folder, 'history'))).runs).toHaveLength(2);
  expect(temporaryFiles(folder)).toEqual([]);
});

test('findings noted at once are all kept', async () => {
  const history = join(bench.folder, 'noted');
  const dates = Array.from({ length: 6 }, (_, i) => `2026-03-0${i + 1}`);
  const started = dates.map((date) =>
    start(bench, ['record', 'Zone 1', '--found', 'wiring', '--history', history, '--date', date, '--quiet']),
  );
  for (const { ended } of started) expect((await ended).status).toBe(0);
  const kept = [...contentsOf(history).keys()].filter((path) => path.includes('record'));
  expect(kept).toHaveLength(1);
  const { stdout } = run(bench, ['record', 'Zone 1', '--found', 'sensor', '--history', history, '--json']);
  expect(JSON.parse(stdout)).toMatchObject({ found: 'sensor' });
});

describe('places that cannot be written', () => {
  /** A file where a folder should be stops root as well, which rights do not. */
  const cases: readonly (readonly [string, (place: string) => string[]])[] = [
    ['the output folder is a file', (place) => ['--out', place]],
    ['the output folder lies below a file', (place) => ['--out', join(place, 'deep', 'er')]],
    ['the findings are a folder', (place) => ['--out', join(place, '..', 'o'), '--json', join(place, '..')]],
    ['the page lies below a file', (place) => ['--out', join(place, '..', 'o'), '--html', join(place, 'page.html')]],
    ['the history is a file', (place) => ['--out', join(place, '..', 'o'), '--history', place]],
    ['the history lies below a file', (place) => ['--out', join(place, '..', 'o'), '--history', join(place, 'h')]],
  ];
  test.each(cases)('%s', (name, options) => {
    const folder = join(bench.folder, name.replaceAll(' ', '-'));
    mkdirSync(folder);
    const place = join(folder, 'file.txt');
    writeFileSync(place, 'mine');
    const before = contentsOf(folder);
    const { status, stderr, stdout } = run(bench, ['report', bench.logs[0], ...options(place)]);
    expect([status, stdout]).toEqual([2, '']);
    expectSentence(stderr);
    expect(stderr).toContain(folder);
    expect(contentsOf(folder)).toEqual(before);
  });

  test('a plant file that is there is not written over', () => {
    const place = join(bench.folder, 'plant.yaml');
    writeFileSync(place, 'zones: []\n');
    const { status, stderr } = run(bench, ['preview', bench.logs[0], '--write-plant', place]);
    expect(status).toBe(2);
    expectSentence(stderr);
  });
});
