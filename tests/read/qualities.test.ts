import { describe, expect, test } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 8, 6);
const rowCount = 300;
const isBadRow = (i: number): boolean => i >= 100 && i < 106;

function log(
  header: string,
  cells: (i: number, quality: string) => readonly (string | number)[],
  words: readonly [string, string],
) {
  const rows = Array.from({ length: rowCount }, (_, i) => {
    const time = new Date(startMs + i * 10_000).toISOString().slice(0, 19);
    return [time, ...cells(i, words[isBadRow(i) ? 1 : 0])].join(';');
  });
  return { 'log.csv': `${header}\n${rows.join('\n')}\n` };
}

const one = (i: number): string => `150.${i % 7}`;
const two = (i: number): string => `160.${i % 5}`;
const bad = Array.from({ length: rowCount }, (_, i) => (isBadRow(i) ? readingState.badQuality : readingState.good));
const good = bad.map(() => readingState.good);

describe('in a wide log a quality speaks of', () => {
  test.each<[string, ReturnType<typeof log>]>([
    [
      'the column before it, in words',
      log(
        'Time;Zone 1 PV;Quality;Zone 1 SP;Zone 2 PV;Quality;Zone 2 SP',
        (i, q) => [one(i), q, 150, two(i), 'Good', 160],
        ['Good', 'Bad'],
      ),
    ],
    [
      'the column before it, as OPC status numbers below "Status"',
      log('Zeit;Zone 1 Ist;Status;Zone 2 Ist;Status', (i, q) => [one(i), q, two(i), 192], ['192', '24']),
    ],
    [
      'the column whose name it carries',
      log('Time;Z1 PV;Z2 PV;Z2 PV quality;Z1 PV quality', (i, q) => [one(i), two(i), 192, q], ['192', '0']),
    ],
    [
      'the zone whose name it carries, first in the row',
      log('Time;Z1 quality;Z2 quality;Z2 PV;Z1 PV', (i, q) => [q, 'Good', two(i), one(i)], ['Good', 'Bad']),
    ],
    ['one zone of two', log('Time;Z1 PV;Z1 quality;Z2 PV', (i, q) => [one(i), q, two(i)], ['Good', 'Bad'])],
  ])('%s', async (_, files) => {
    for (const isFast of [true, false]) {
      const { zones, found } = await pourFiles(files, {}, { isFast });
      const byName = [...zones].sort((a, b) => a.name.localeCompare(b.name));
      expect(byName.map(({ state }) => state)).toEqual([bad, good]);
      expect(found.files[0]!.columns.filter(({ role }) => role === 'running')).toEqual([]);
    }
  });

  test.each([
    ['in words', ['Good', 'Bad']],
    ['as OPC status numbers', ['192', '0']],
  ] as const)('all columns where there is one without a name, %s', async (_, words) => {
    const { zones } = await pourFiles(log('Time;Z1 PV;Z2 PV;Status', (i, q) => [one(i), two(i), q], words));
    expect(zones.map(({ state }) => state)).toEqual([bad, bad]);
  });

  test('a set point, which is then not known', async () => {
    const files = log('Time;Z1 PV;Z1 PV quality;Z1 SP;Z1 SP quality', (i, q) => [one(i), 'Good', 150, q], [
      'Good',
      'Bad',
    ]);
    const { zones } = await pourFiles(files);
    expect(zones[0]!.state).toEqual(good);
    expect([zones[0]!.setpointDegC[50], zones[0]!.setpointDegC[103]]).toEqual([150, NaN]);
  });
});
