import { describe, expect, test } from 'vitest';
import { inFolder, pourFiles } from './poured.js';
import { survey } from '../../src/read/survey/survey.js';

const rowCount = 400;
const stepS = 300;
const startMs = Date.UTC(2026, 2, 3, 6, 0, 0);
const two = (n: number): string => String(Math.floor(n)).padStart(2, '0');
const span = (s: number): string => `${Math.floor(s / 3600)}:${two((s / 60) % 60)}:${two(s % 60)}`;
const log = (above: readonly string[], name: string, count: (i: number) => string): string =>
  [
    ...above,
    `${name};Z1 °C;Z2 °C`,
    ...Array.from({ length: rowCount }, (_, i) => `${count(i)};${180 + (i % 7) / 10};${160 + (i % 5) / 10}`),
  ].join('\n') + '\n';

describe('rows that count from a fixed moment', () => {
  // Steps of 100 ns are common practice of operating systems; 1904 is a day 0 of ECMA-376 part 1, 18.17.4.1.
  test.each<[string, (ms: number) => string]>([
    ['seconds since 1904', (ms) => `${(ms - Date.UTC(1904, 0, 1)) / 1000}`],
    ['steps of 100 ns since 1601', (ms) => `${(BigInt(ms) - BigInt(Date.UTC(1601, 0, 1))) * 10_000n}`],
    ['steps of 100 ns since the year 1', (ms) => `${(BigInt(ms) - BigInt(Date.parse('0001-01-01'))) * 10_000n}`],
  ])('%s', async (why, count) => {
    const text = log([], 'Timestamp', (i) => count(startMs + i * stepS * 1000));
    const { found, zones } = await pourFiles({ 'log.csv': text });
    expect(found.files[0]!.time.why).toBe(`${why}, by their size`);
    expect(zones[0]!.timeMs).toEqual(Array.from({ length: rowCount }, (_, i) => startMs + i * stepS * 1000));
  });
});

describe('rows that count from a start', () => {
  test.each<[string, readonly string[], string, (i: number) => string]>([
    ['seconds', ['Logger 7', 'Start: 2026-03-03 06:00:00'], 'Time (s)', (i) => `${i * stepS}`],
    ['minutes', ['Start date: 03.03.2026', 'Start time: 06:00:00'], 'Time (min)', (i) => `${(i * stepS) / 60}`],
    ['hours, minutes and seconds', ['Started;3 March 2026 06:00'], 'Time', (i) => span(i * stepS)],
    ['beyond a day, hours with zeros', ['2026-03-03 06:00'], 'hh:mm:ss', (i) => span(i * stepS).padStart(9, '0')],
    [
      'days, hours, minutes and seconds',
      ['Start: 2026-03-03 06:00'],
      'Run time',
      (i) => `${Math.floor((i * stepS) / 86_400)}.${span((i * stepS) % 86_400)}`,
    ],
    [
      'rows, numbered from 1',
      ['Start;2026-03-03 06:00:00', 'Interval;300 s', 'Export;2026-03-09 10:00:00'],
      'No.',
      (i) => `${i + 1}`,
    ],
  ])('%s', async (_, above, name, count) => {
    const { found, zones } = await pourFiles({ 'log.csv': log(above, name, count) });
    expect(zones.map((zone) => [zone.name, zone.timeMs.length])).toEqual([
      ['Z1', rowCount],
      ['Z2', rowCount],
    ]);
    expect(zones[0]!.timeMs.slice(0, 2)).toEqual([startMs, startMs + stepS * 1000]);
    expect(zones[0]!.timeMs.at(-1)).toBe(startMs + (rowCount - 1) * stepS * 1000);
    expect(found.files[0]!.time.why).toContain('since the start, which stands above the rows');
  });

  // Quantity and unit apart by a slash: ISO 80000-1, 7.1.4; the others are common practice.
  test.each([
    ['t/min', 60],
    ['Time (mins)', 60],
    ['Zeit [Minuten]', 60],
    ['Time/h', 3600],
    ['Time (hrs)', 3600],
    ['Laufzeit (Std)', 3600],
    ['Temps (heures)', 3600],
    ['Tempo (ore)', 3600],
    ['时间(分)', 60],
    ['t [msec]', 0.001],
    ['Time (days)', 86_400],
  ])('%s', async (name, unitS) => {
    const text = log(['Start: 2026-03-03 06:00:00'], name, (i) => `${(i * stepS) / unitS}`);
    const { zones } = await pourFiles({ 'log.csv': text });
    expect(zones[0]!.timeMs).toEqual(Array.from({ length: rowCount }, (_, i) => startMs + i * stepS * 1000));
  });

  test('a unit in a row of its own', async () => {
    const text = log(['Start: 2026-03-03 06:00:00'], 'Time', (i) => `${(i * stepS) / 60}`);
    const { zones } = await pourFiles({ 'log.csv': text.replace('Z1 °C;Z2 °C\n', 'Z1;Z2\nmin;°C;°C\n') });
    expect(zones[0]!.timeMs.at(-1)).toBe(startMs + (rowCount - 1) * stepS * 1000);
  });

  test('milliseconds of two weeks are no seconds since 1970', async () => {
    const { found, zones } = await pourFiles({
      'log.csv': log([], 'Time (ms)', (i) => `${1_234_567_000 + i * stepS * 1000}`),
    });
    expect(found.files[0]!.time.kind).toBe('elapsed');
    expect(zones[0]!.timeMs[1]! - zones[0]!.timeMs[0]!).toBe(stepS * 1000);
  });

  test("the start in the file's name", async () => {
    const { zones } = await pourFiles({ 'run_20260303_060000.csv': log([], 'Seconds', (i) => `${i * stepS}`) });
    expect(zones[0]!.timeMs[1]).toBe(startMs + stepS * 1000);
  });

  test('a start without a clock is told', async () => {
    const { found } = await pourFiles({ 'log.csv': log(['Start: 2026-03-03'], 'Time (s)', (i) => `${i * stepS}`) });
    expect(found.files[0]!.firstMs).toBe(Date.UTC(2026, 2, 3));
    expect(found.files[0]!.time.why).toContain('without a clock: midnight is taken');
  });

  test('a start in which nothing tells day from month is told', async () => {
    const { found } = await pourFiles({
      'log.csv': log(['Start 03/04/2026 06:00'], 'Time (s)', (i) => `${i * stepS}`),
    });
    expect(found.problems.map(({ code }) => code)).toContain('ambiguous-time');
  });

  test.each([
    ['no line says it', []],
    ['the moment of the export is none', ['Exported: 2026-03-09 10:00:00']],
    [
      'of two moments none is called the start',
      ['Calibrated: 2026-01-09 10:00', '2026-03-03 06:00', '2026-03-04 06:00'],
    ],
  ])('without a start this is told, and the way out is said: %s', async (_, above) => {
    const content = log(above, 'Elapsed (s)', (i) => `${i * stepS}`);
    const found = await inFolder({ 'log.csv': content }, (folder) => survey([folder]));
    expect(found.files[0]!.firstMs).toBe(0);
    expect(found.problems[0]).toMatchObject({ code: 'ambiguous-time', line: above.length + 2 });
    expect(found.problems[0]!.what).toContain('"Elapsed (s)" holds s since a start that nothing says');
    expect(found.problems[0]!.todo).toContain('Start: 2026-03-02 06:00:00');
  });
});

test('times of day below a start are times of day', async () => {
  const above = ['Start: 2026-03-03 06:00:00'];
  const { zones } = await pourFiles({ 'log.csv': log(above, 'Time', (i) => span((6 * 3600 + i * stepS) % 86_400)) });
  expect(zones[0]!.timeMs[0]).toBe(startMs);
  expect(zones[0]!.timeMs.at(-1)).toBe(startMs + (rowCount - 1) * stepS * 1000);
});
