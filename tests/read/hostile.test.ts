import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { workbookOf } from '../make/workbook.js';
import { inFolder, pourFiles, pourPaths, type Poured } from './poured.js';

const startMs = Date.UTC(2026, 0, 5);
const line = (row: number): string =>
  `${new Date(startMs + row * 10_000).toISOString()},${(22 + row / 10).toFixed(1)},${150 + (row % 3)}`;
const lines = (from: number, to: number): string =>
  Array.from({ length: to - from }, (_, i) => `${line(from + i)}\n`).join('');
const good = (rows = 50): string => `Time,Z1 PV,Z1 SP\n${lines(0, rows)}`;

const codes = ({ found, result }: Poured): string[] =>
  [...found.problems, ...result.problems].map((problem) => problem.code);
const told = (poured: Poured, code: string) =>
  [...poured.found.problems, ...poured.result.problems].find((problem) => problem.code === code);

/** Every sentence says what and what to do. */
function expectSentences({ found, result }: Poured): void {
  for (const { what, todo } of [...found.problems, ...result.problems]) {
    expect(what).toMatch(/[.?!]$/);
    expect(todo).toMatch(/[.?!]$/);
  }
}

describe('files that cannot be read leave the rest readable', () => {
  test.each<[string, string, string | Uint8Array, string]>([
    ['empty', 'bad.csv', '', 'empty-file'],
    ['binary', 'bad.csv', Buffer.from(Array.from({ length: 4000 }, (_, i) => (i * 73) % 256)), 'binary-file'],
    ['a damaged .gz', 'bad.csv.gz', gzipSync(good(20_000)).subarray(0, 3000).fill(7, 1000), 'unreadable-file'],
    ['a damaged .xlsx', 'bad.xlsx', Buffer.from('not a workbook'), 'unreadable-file'],
    ['a damaged .parquet', 'bad.parquet', Buffer.from('PAR1 and nothing'), 'unreadable-file'],
    ['no times', 'bad.csv', 'a,b\nx,y\nz,w\n', 'unknown-layout'],
    [
      'comma for cells and decimals',
      'bad.csv',
      `Time,Z9 PV,Z9 SP\n${Array.from({ length: 20 }, (_, i) => `2026-01-05 00:00:${10 + i},22,${i % 10},150,0`).join('\n')}\n`,
      'ambiguous-layout',
    ],
  ])('%s', async (_, name, content, code) => {
    const poured = await pourFiles({ 'good.csv': good(), [name]: content });
    expect(codes(poured)).toContain(code);
    expect(told(poured, code)!.file).toContain(name);
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
    expectSentences(poured);
  });

  test('a path that is not there', async () => {
    const poured = await inFolder({ 'good.csv': good() }, (folder) => pourPaths([folder, join(folder, 'none.csv')]));
    expect(told(poured, 'not-found')!.file).toContain('none.csv');
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
  });

  test('folders that contain themselves by a link', async () => {
    const poured = await inFolder({ 'a/good.csv': good() }, async (folder) => {
      symlinkSync(folder, join(folder, 'a', 'again'));
      symlinkSync(join(folder, 'loop'), join(folder, 'loop'));
      return pourPaths([folder]);
    });
    expect(poured.found.files).toHaveLength(1);
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
    expectSentences(poured);
  });

  test('a gzip that grows beyond any log stops with a sentence', async () => {
    const bomb = gzipSync(Buffer.concat([Buffer.from(good()), Buffer.alloc(80 * 1024 * 1024, ' ')]), { level: 9 });
    const poured = await pourFiles({ 'bomb.csv.gz': bomb, 'good.csv': good().replaceAll('Z1', 'Z2') });
    expect(told(poured, 'too-large')!.file).toContain('bomb.csv.gz');
    expect(poured.zones.find((zone) => zone.name === 'Z2')!.timeMs).toHaveLength(50);
    expectSentences(poured);
  });

  test('a zip entry that would leave its folder is told and read in place', async () => {
    const poured = await pourFiles({ 'logs.zip': zipSync({ '../../evil.csv': Buffer.from(good()) }) });
    expect(told(poured, 'archive-entry')!.what).toContain('../../evil.csv');
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
  });
});

describe('rows that cannot be read are counted, with line and reason', () => {
  test.each<[string, string, string, number, number]>([
    ['half a line at the end', `${good()}2026-01-05T00:0`, 'half-line', 52, 50],
    ['a time that is none', `${good()}yesterday,22.0,150\n${lines(50, 60)}`, 'bad-time', 52, 60],
    ['too few cells', `${good()}2026-01-05T00:08:20.000Z,22\n${lines(51, 60)}`, 'short-row', 52, 59],
    ['too many cells', `${good()}2026-01-05T00:08:20.000Z,22,0,150,0\n${lines(51, 60)}`, 'long-row', 52, 59],
    ['NUL bytes', `${good()}2026-01-05T00:08:20.000Z,\0\0\0,150\n${lines(51, 60)}`, 'nul-bytes', 52, 59],
    [
      'a quote that is never closed',
      `${good()}"2026-01-05T00:08:20.000Z,22.0,150\n${lines(51, 60)}`,
      'open-quote',
      52,
      59,
    ],
    [
      'a quote that only the next row would close',
      `${good()}2026-01-05T00:08:20.000Z,22.0,"150\n${lines(51, 60).replaceAll(/,(\d+)$/gm, ',"$1"')}`,
      'open-quote',
      52,
      59,
    ],
    ['the header again', `${good()}Time,Z1 PV,Z1 SP\n${lines(50, 60)}`, 'repeated-header', 52, 60],
    ['a line of ten million characters', `${good()}${'9'.repeat(10_000_000)}\n${lines(50, 60)}`, 'long-line', 52, 60],
  ])('%s', async (_, text, reason, atLine, kept) => {
    const poured = await pourFiles({ 'log.csv': text });
    const [source] = poured.result.sources;
    expect(source!.rejectedByReason).toEqual({ [reason]: 1 });
    expect(source!.rowsRead).toBe(kept);
    expect(poured.zones[0]!.timeMs).toHaveLength(kept);
    expect(poured.result.problems.map((problem) => problem.line)).toEqual([atLine]);
    expectSentences(poured);
  });

  test('a line that is too long is told with its beginning and length, at the end of the file as well', async () => {
    const long = `header ${'9'.repeat(2_499_993)}`;
    const { result } = await pourFiles({ 'log.csv': `${good()}${long}\n${lines(50, 60)}${long}` });
    const [source] = result.sources;
    expect(source!.rejectedByReason).toEqual({ 'long-line': 2 });
    expect(source!.rejectedExamples).toHaveLength(1);
    expect(source!.rejectedExamples![0]!.text).toMatch(/^header 9{33}… 2\.5 million characters in all$/);
    expect(result.examples.get(source!.file)!.map(({ line }) => line)).toEqual([52, 63]);
  });

  test('rows of a packed file that breaks off stay', async () => {
    const rows = Array.from({ length: 60_000 }, (_, row) => `${line(row % 40_000 ? row : row)}\n`).join('');
    const whole = gzipSync(`Time,Z1 PV,Z1 SP\n${rows}`);
    const poured = await pourFiles({ 'log.csv.gz': whole.subarray(0, Math.floor(whole.length * 0.9)) });
    expect(codes(poured)).toContain('unreadable-file');
    expect(poured.zones[0]!.timeMs.length).toBeGreaterThan(30_000);
  });
});

test('of a small packed file that is damaged at its end nothing is read, and this is told', async () => {
  const damaged = Buffer.concat([gzipSync(good()), Buffer.from('and more')]);
  const poured = await pourFiles({ 'log.csv.gz': damaged, 'good.csv': good().replaceAll('Z1', 'Z2') });
  expect(told(poured, 'unreadable-file')!.todo).toContain('Nothing of it was read');
  expect(poured.zones.map(({ name }) => name)).toEqual(['Z2']);
});

describe('a first line that is no row', () => {
  const long = '9'.repeat(10_000_000);
  const notes = ({ result, found }: Awaited<ReturnType<typeof pourFiles>>) =>
    [...found.problems, ...result.problems].filter(({ code }) => code === 'long-line');

  test.each([
    ['log.csv', (text: string) => text],
    ['log.csv.gz', (text: string) => gzipSync(text)],
    ['log.txt', (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le')],
  ])('%s: it is told with its line and length, and the table behind it is read', async (name, pack) => {
    const poured = await pourFiles({ [name]: pack(`${long}\n${good()}`) });
    expect(notes(poured)[0]).toMatchObject({ line: 1 });
    expect(notes(poured)[0]!.what).toContain('The first line is 10.0 million characters long');
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
    expect(poured.found.files[0]!.firstDataLine).toBe(3);
    expectSentences(poured);
  });

  test('a file that is one line says so', async () => {
    const poured = await pourFiles({ 'one.csv': long, 'good.csv': good() });
    expect(notes(poured)).toMatchObject([
      { line: 1, what: expect.stringContaining('one line of 10.0 million characters') },
    ]);
    expect(poured.zones[0]!.timeMs).toHaveLength(50);
  });

  test.each([50, 30_000])('carriage returns alone end lines, too: %i rows', async (count) => {
    const text = good(count);
    const [poured, usual] = [
      await pourFiles({ 'log.csv': text.replaceAll('\n', '\r') }),
      await pourFiles({ 'log.csv': text }),
    ];
    expect(poured.zones).toEqual(usual.zones);
    expect(poured.zones[0]!.timeMs).toHaveLength(count);
  });
});

test('a column named __proto__ is a column', async () => {
  const { zones } = await pourFiles({ 'log.csv': `Time,__proto__ (°C),constructor (°C)\n${lines(0, 30)}` });
  expect(zones.map((zone) => zone.name)).toEqual(['__proto__', 'constructor']);
  expect(zones[0]!.readingDegC[10]).toBe(23);
});

test('the clock that goes back is told with its line, and an hour is told as the end of summer time', async () => {
  const text = `Time,Z1 PV\n${Array.from({ length: 300 }, (_, i) => `2026-10-25 ${String(1 + Math.floor((i < 120 ? i : i - 60) / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}:00,${20 + (i % 7)}`).join('\n')}\n`;
  const poured = await pourFiles({ 'log.csv': text });
  expect(told(poured, 'clock-jump')).toMatchObject({ line: 122, count: 1 });
  expect(told(poured, 'clock-jump')!.what).toContain('summer time');
  expect(poured.result.sources[0]!.rejectedByReason).toEqual({ repeated: 60 });
  const placed = await pourFiles({ 'log.csv': text }, { timezone: 'Europe/Oslo' });
  expect(placed.zones[0]!.timeMs).toHaveLength(300);
  expect(placed.zones[0]!.timeMs.slice(1).every((ms, i) => ms - placed.zones[0]!.timeMs[i]! === 60_000)).toBe(true);
});

test('the hour that stands twice is read whole from a log that is written newest first, or tag after tag', async () => {
  const minutes = Array.from({ length: 300 }, (_, i) => i);
  const clock = (i: number) => new Date(Date.UTC(2026, 9, 25, 1) + (i < 120 ? i : i - 60) * 60_000).toISOString();
  const row = (i: number, tag: string) => `${clock(i).slice(0, 19)}${tag},${20 + (i % 7)}`;
  const newestFirst = `Time,Z1 PV\n${minutes.map((i) => row(299 - i, '')).join('\n')}\n`;
  const byTag = `Time,Tag,Value\n${['Z1 PV', 'Z2 PV'].flatMap((tag) => minutes.map((i) => row(i, `,${tag}`))).join('\n')}\n`;
  for (const [text, order] of [
    [newestFirst, 'falling'],
    [byTag, 'by-tag'],
  ] as const) {
    const { found, zones, result } = await pourFiles({ 'log.csv': text }, { timezone: 'Europe/Oslo' });
    expect(found.files[0]!.order).toBe(order);
    expect(result.sources[0]!.rowsRejected).toBe(0);
    for (const zone of zones) {
      expect(zone.timeMs).toEqual(minutes.map((i) => Date.UTC(2026, 9, 24, 23) + i * 60_000));
      expect(zone.readingDegC).toEqual(minutes.map((i) => 20 + (i % 7)));
    }
  }
});

test('rows that are repeated or a little out of order are put right and counted', async () => {
  const shown = [...Array.from({ length: 40 }, (_, row) => line(row)), line(38), line(42), line(41), line(43)];
  const poured = await pourFiles({ 'log.csv': `Time,Z1 PV,Z1 SP\n${shown.join('\n')}\n` });
  expect(poured.zones[0]!.timeMs).toHaveLength(43);
  expect(poured.result.sources[0]!.rejectedByReason).toEqual({ repeated: 1 });
});

describe('files under another ending than their own', () => {
  const text = `${good()}${lines(50, 60)}`;
  test.each<[string, Uint8Array | string]>([
    ['packed.csv', gzipSync(text)],
    ['plain.csv.gz', text],
    ['archive.csv', zipSync({ 'a.csv': Buffer.from(text) })],
    ['book.dat', workbookOf(text)],
    ['LOG0001', text],
  ])('%s is read for what it is', async (name, content) => {
    const { zones, found } = await pourFiles({ [name]: content });
    expect(found.problems.filter(({ code }) => code !== 'ambiguous-unit')).toEqual([]);
    expect(zones[0]!.timeMs).toHaveLength(60);
  });

  test.each<[string, Uint8Array, string]>([
    ['old.xls', Buffer.from('d0cf11e0a1b11ae10000', 'hex'), 'a workbook in the older format (.xls)'],
    ['empty.zip', zipSync({}), 'No file was found in the archive'],
    ['nothing.zip', new Uint8Array(0), 'No file was found in the archive'],
  ])('%s is told in a sentence', async (name, content, says) => {
    const { found } = await pourFiles({ [name]: content });
    expect(found.problems.map(({ what }) => what).join(' ')).toContain(says);
  });
});
