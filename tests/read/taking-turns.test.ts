import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 4, 4, 6);
const rowCount = 1200;

/** Noise of a tenth or two, the same in every run. */
const noise = (n: number): number => 0.2 * Math.sin(12.9898 * n) * Math.cos(78.233 * n);
const timeOf = (atMs: number): string => new Date(startMs + atMs).toISOString().slice(0, 19).replace('T', ' ');

/** @param rowAt Time behind the start, and the readings. */
async function mixedZones(names: readonly string[], rowAt: (row: number) => readonly [number, ...number[]]) {
  const rows = Array.from({ length: rowCount }, (_, row) => {
    const [atMs, ...readings] = rowAt(row);
    return [timeOf(atMs), ...readings.map((it) => it.toFixed(1))].join(',');
  });
  const log = `${[['Time', ...names].join(','), ...rows].join('\n')}\n`;
  const { found } = await pourFiles({ 'log.csv': log }, { unit: 'degC' });
  const isTold = found.problems.some(({ what }) => what.includes('take turns'));
  expect(found.zones.every(({ isMixed }) => (isMixed ?? false) === isTold)).toBe(true);
  return isTold;
}

describe('two machines that take turns in one file are told', () => {
  const isSecond = (row: number): boolean => row % 2 === 1;
  test('with times of their own', async () => {
    const told = await mixedZones(['Zone 1', 'Zone 2'], (row) => {
      const plus = isSecond(row) ? -30 : 0;
      return [
        Math.floor(row / 2) * 10_000 + (isSecond(row) ? 4000 : 0),
        180 + plus + noise(row),
        200 + plus + noise(row + 7),
      ];
    });
    expect(told).toBe(true);
  });
  test('at even steps, the one hotter in one zone and cooler in the other', async () => {
    const told = await mixedZones(['Zone 1', 'Zone 2'], (row) => {
      const plus = isSecond(row) ? -8 : 0;
      return [row * 5000, 180 + plus + noise(row), 180 - plus + noise(row + 7)];
    });
    expect(told).toBe(true);
  });
  test('one zone each, by their times', async () => {
    const told = await mixedZones(['Temperature'], (row) => [
      Math.floor(row / 2) * 10_000 + (isSecond(row) ? 3000 : 0),
      (isSecond(row) ? 150 : 180) + noise(row),
    ]);
    expect(told).toBe(true);
  });
});

describe('what comes and goes on one machine is none', () => {
  test.each([
    ['an input that opens every other row', (row: number) => (row % 2 === 1 ? 850 : 180 + noise(row))],
    [
      'a cable that flexes between two values',
      (row: number) => (row % 2 === 1 ? 140 + 9 * noise(row) : 180 + noise(row)),
    ],
    ['a loop that hunts', (row: number) => 180 + 6 * Math.sin(row / 3)],
    ['strong noise', (row: number) => 180 + 60 * noise(row)],
  ])('%s', async (_, faulty) => {
    const names = ['Zone 1', 'Zone 2', 'Zone 3'];
    const told = await mixedZones(names, (row) => [
      row * 10_000,
      faulty(row),
      190 + noise(row + 3),
      200 + noise(row + 9),
    ]);
    expect(told).toBe(false);
    expect(await mixedZones(['Zone 1'], (row) => [row * 10_000, faulty(row)])).toBe(false);
  });
});

test('seconds that nothing else names are counted from a start that nothing says, and this is told', async () => {
  const rows = Array.from({ length: 300 }, (_, row) => `${row * 10},${(180 + noise(row)).toFixed(1)}`);
  const { found, zones } = await pourFiles({ 'run.csv': `Seconds,Zone 1\n${rows.join('\n')}\n` }, { unit: 'degC' });
  expect(zones[0]!.timeMs).toEqual(rows.map((_, row) => row * 10_000));
  expect(found.problems.map(({ code }) => code)).toContain('ambiguous-time');
});
