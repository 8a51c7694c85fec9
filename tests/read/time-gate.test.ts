import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { homeTimes, isUnsetClock } from '../../src/read/times/home-times.js';
import { fewestTimes, mostHeldRows, TimeGate } from '../../src/read/times/time-gate.js';
import { pourFiles, type Poured } from './poured.js';

const dayMs = 86_400_000;
const startMs = Date.UTC(2026, 0, 5);
const rowsAt = (fromMs: number, count: number): string =>
  Array.from({ length: count }, (_, i) => line(fromMs + i * 10_000, i)).join('');
const line = (ms: number, i: number): string =>
  `${new Date(ms).toISOString()},${(150 + (i % 7) / 10).toFixed(1)},150\n`;
const header = 'Time,Z1 PV,Z1 SP\n';

const timesOf = ({ zones }: Poured): number[] => zones[0]!.timeMs;
const leftOut = ({ result }: Poured) => result.sources[0]!.rejectedByReason;

describe('a row whose time is years from the rest', () => {
  test.each([
    ['in 2062', '2062'],
    ['a year typed wrong', '2025'],
    ['in 1926', '1926'],
  ])('%s is left out and told with its line; all rows behind it are read', async (_, year) => {
    const odd = line(startMs + 1000 * 10_000, 1).replace('2026', year);
    const rows = `${rowsAt(startMs, 1000)}${odd}${rowsAt(startMs + 1001 * 10_000, 9000)}`;
    const poured = await pourFiles({ 'log.csv': header + rows });
    expect(timesOf(poured)).toHaveLength(10_000);
    expect(leftOut(poured)).toEqual({ 'far-time': 1 });
    const [problem] = poured.result.problems;
    expect(problem).toMatchObject({ code: 'clock-jump', line: 1002, count: 1 });
    expect(problem!.what).toContain(`${year}-01-05`);
    expect(poured.result.examples.get(poured.found.files[0]!.name)![0]).toMatchObject({
      line: 1002,
      reason: 'far-time',
    });
  });

  test.each([
    ['first', [`2062-01-05T00:00:00.000Z,150.0,150\n${rowsAt(startMs, 60)}`]],
    ['last', [`${rowsAt(startMs, 60)}2062-01-05T00:00:00.000Z,150.0,150\n`]],
    ['last, without line end', [`${rowsAt(startMs, 60)}2062-01-05T00:00:00.000Z,150.0,150`]],
  ])('%s row of the file', async (_, [rows]) => {
    const poured = await pourFiles({ 'log.csv': header + rows! });
    expect(timesOf(poured)).toHaveLength(60);
    expect(leftOut(poured)).toEqual({ 'far-time': 1 });
  });

  test('in a long log, all values of that time', async () => {
    const at = (ms: number) => ['Z1 PV', 'Z1 SP', 'Z2 PV'].map((tag) => `${new Date(ms).toISOString()},${tag},150\n`);
    const times = Array.from({ length: 200 }, (_, i) => startMs + i * 10_000);
    times[77] = Date.UTC(2008, 0, 5);
    const poured = await pourFiles({ 'log.csv': `time,tag,value\n${times.flatMap(at).join('')}` });
    expect(timesOf(poured)).toHaveLength(199);
    expect(leftOut(poured)).toEqual({ 'far-time': 3 });
  });

  test('a clock that shows another year for hours and comes back', async () => {
    const upset = rowsAt(Date.UTC(2040, 5, 1), 2000);
    const rows = `${rowsAt(startMs, 3000)}${upset}${rowsAt(startMs + 5000 * 10_000, 3000)}`;
    const poured = await pourFiles({ 'log.csv': header + rows });
    expect(timesOf(poured)).toHaveLength(6000);
    expect(leftOut(poured)).toEqual({ 'far-time': 2000 });
  });
});

describe('what stays', () => {
  test.each([200, 400, 4000])('two well-filled parts %i days apart, plain and packed', async (days) => {
    const rows = header + rowsAt(startMs - days * dayMs, 6000) + rowsAt(startMs, 6000);
    for (const files of [{ 'log.csv': rows }, { 'log.csv.gz': gzipSync(rows) }]) {
      const poured = await pourFiles(files);
      expect(timesOf(poured)).toHaveLength(12_000);
      expect(leftOut(poured)).toEqual({});
    }
  });

  test('a short part that ends or begins the file', async () => {
    for (const [first, second] of [
      [8000, 30],
      [30, 8000],
    ] as const) {
      const rows = rowsAt(startMs - 500 * dayMs, first) + rowsAt(startMs, second);
      const poured = await pourFiles({ 'log.csv.gz': gzipSync(header + rows) });
      expect(timesOf(poured)).toHaveLength(8030);
    }
  });

  test('newest first', async () => {
    const rows = (rowsAt(startMs - 500 * dayMs, 2000) + rowsAt(startMs, 2000)).split('\n').slice(0, -1).reverse();
    const poured = await pourFiles({ 'log.csv': `${header}${rows.join('\n')}\n` });
    expect(timesOf(poured)).toHaveLength(4000);
  });

  test('few rows over years, each within months of the next', async () => {
    const rows = Array.from({ length: 40 }, (_, i) => line(startMs - i * 90 * dayMs, i)).reverse();
    const poured = await pourFiles({ 'log.csv': header + rows.join('') });
    expect(timesOf(poured)).toHaveLength(40);
  });
});

describe('a clock that was not set', () => {
  test.each([1970, 1980, 2000])('rows from the start of %i until it is set are left out', async (year) => {
    const rows = rowsAt(Date.UTC(year, 0, 1), 1500) + rowsAt(startMs, 1500);
    const poured = await pourFiles({ 'log.csv': header + rows });
    expect(timesOf(poured)).toHaveLength(1500);
    expect(timesOf(poured)[0]).toBe(startMs);
    expect(leftOut(poured)).toEqual({ 'unset-clock': 1500 });
    expect(poured.result.problems[0]).toMatchObject({ code: 'clock-jump', line: 2, count: 1500 });
  });

  test('seconds counted from 0 until it is set', async () => {
    const counted = (fromS: number, count: number) =>
      Array.from({ length: count }, (_, i) => `${fromS + 10 * i},21.5,150\n`).join('');
    const poured = await pourFiles({ 'log.csv': header + counted(0, 3) + counted(startMs / 1000, 100) });
    expect(timesOf(poured)).toHaveLength(100);
    expect(timesOf(poured)[0]).toBe(startMs);
    expect(leftOut(poured)).toEqual({ 'unset-clock': 3 });
  });

  test('in a file of its own beside files of today', async () => {
    const poured = await pourFiles({
      'day-1.csv': header + rowsAt(Date.UTC(1970, 0, 1), 100),
      'day-2.csv': header + rowsAt(startMs, 100),
    });
    expect(timesOf(poured)).toHaveLength(100);
    expect(poured.result.sources.map(({ rejectedByReason }) => rejectedByReason)).toContainEqual({
      'unset-clock': 100,
    });
  });

  test('a log that has no other times keeps them', async () => {
    const poured = await pourFiles({ 'log.csv': header + rowsAt(Date.UTC(1970, 0, 1), 100) });
    expect(timesOf(poured)).toHaveLength(100);
  });

  test('only the first year after such a start is doubted', () => {
    expect(isUnsetClock(Date.UTC(1970, 5, 1))).toBe(true);
    expect(isUnsetClock(Date.UTC(1972, 0, 1))).toBe(false);
    expect(isUnsetClock(Date.UTC(2026, 0, 1))).toBe(false);
  });
});

describe('the gate holds few rows', () => {
  const home = [{ fromMs: startMs, toMs: startMs }];
  const farOffMs = startMs + 5000 * dayMs;

  test('after so many rows they are a part of the log, and the gate holds none', () => {
    const gate = new TimeGate<number>({ homeMs: home, order: 'rising' }, () => expect.unreachable());
    const taken = Array.from({ length: mostHeldRows }, (_, i) => gate.take(i, farOffMs + i)).flat();
    expect(taken).toEqual(Array.from({ length: mostHeldRows }, (_, i) => i));
    expect(gate.passes(farOffMs)).toBe(true);
  });

  test('fewer times than a part needs are set aside in any case', () => {
    const aside: number[] = [];
    const gate = new TimeGate<number>({ homeMs: home, order: 'rising' }, (row) => aside.push(row));
    const taken = Array.from({ length: fewestTimes - 1 }, (_, i) => gate.take(i, farOffMs + i)).flat();
    expect([...taken, ...gate.end()]).toEqual([]);
    expect(aside).toHaveLength(fewestTimes - 1);
  });
});

test('a stray row makes no home; parts that fill a stretch do', () => {
  const part = (fromMs: number) => Array.from({ length: 20 }, (_, i) => fromMs + i * 1000);
  const clock = [...part(startMs), startMs + 9000 * dayMs, NaN, ...part(startMs + 900 * dayMs)];
  const stretch = clock.map((_, i) => (i < 22 ? 0 : 1));
  expect(homeTimes(clock, stretch).map(({ fromMs }) => fromMs)).toEqual([startMs, startMs + 900 * dayMs]);
  expect(homeTimes([NaN], [0])).toEqual([]);
});

test('a packed log whose clock is set only near its end shows that at its end', async () => {
  const unset = rowsAt(Date.UTC(2000, 0, 1), 30_000);
  const set = rowsAt(startMs, 4000);
  const poured = await pourFiles({ 'log.csv.gz': gzipSync(header + unset + set) });
  expect(timesOf(poured)).toHaveLength(4000);
  expect(leftOut(poured)).toEqual({ 'unset-clock': 30_000 });
});
