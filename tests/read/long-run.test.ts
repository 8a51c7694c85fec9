import { expect, test } from 'vitest';
import { emptyBatch } from '../../src/read/rows/long-reader.js';
import { LongRun } from '../../src/read/rows/long-run.js';
import { RowScanner } from '../../src/read/rows/row-scanner.js';
import { survey } from '../../src/read/survey/survey.js';
import { inFolder } from './poured.js';

const tags = ['Z1 PV', 'Z1 SP', 'Z2 PV', 'Z2 SP'];
const clock = (second: number): string => new Date(Date.UTC(2026, 0, 5, 6, 0, second)).toISOString().slice(0, 19);
const rowsOf = (second: number, end: string): string[] =>
  tags.map((tag, i) => `${clock(second)};${tag};${i % 2 ? '150,0' : `${140 + i},${second % 10}`}${end}`);

/** Rows that a run takes behind a minute that was read row by row, up to the first that it leaves. */
async function runOver(rows: readonly string[], column: string, end: string, room = 8192): Promise<number> {
  const header = `time;tag;value${column}`;
  const first = Array.from({ length: 30 }, (_, second) => rowsOf(second, end)).flat();
  const files = { 'log.csv': [header, ...first, ''].join('\n') };
  return inFolder(files, async (folder) => {
    const [file] = (await survey([folder])).files;
    const scanner = new RowScanner(file!, 1);
    for (const tag of file!.tags) scanner.addTag(tag.text ?? tag.name);
    const parts = scanner.runParts()!;
    const known = Buffer.from([...first, ''].join('\n'));
    for (let p = 0; p < known.length;) p = scanner.scan(known, p, 0);
    const batch = emptyBatch(room);
    const run = new LongRun(file!, parts, batch, room);
    const bytes = Buffer.from([...rows, ''].join('\n'));
    run.take(bytes, 0, bytes.length, 2, () => true);
    expect(batch.length).toBe(run.rowCount);
    expect([...batch.line.subarray(0, batch.length)]).toEqual(Array.from({ length: batch.length }, (_, i) => i + 2));
    return run.rowCount;
  });
}

const plain = (end: string): string[] => [30, 31, 32].flatMap((second) => rowsOf(second, end));

test('a run takes plain rows, also with a quality, a column that nobody reads, and carriage returns', async () => {
  expect(await runOver(plain(''), '', '')).toBe(12);
  expect(await runOver(plain(';Good'), ';quality', ';Good')).toBe(12);
  expect(await runOver(plain(';192;line 3'), ';quality;remark', ';192;line 3')).toBe(12);
  expect(await runOver(plain('\r'), '\r', '\r')).toBe(12);
});

test('a run stops where the batch is full', async () => {
  expect(await runOver(plain(''), '', '', 7)).toBe(7);
});

test('a run stops before a row that is out of the ordinary', async () => {
  const odd = {
    'a word': `${clock(31)};Z1 PV;####`,
    'an empty cell': `${clock(31)};Z1 PV;`,
    'another tag': `${clock(31)};Z1 PVX;21,5`,
    'a tag out of its turn': `${clock(31)};Z2 PV;21,5`,
    quotes: `"${clock(31)}";Z1 PV;21,5`,
    'a cell too many': `${clock(31)};Z1 PV;21,5;9`,
    'a cell too few': `${clock(31)};Z1 PV`,
    'a blank behind': `${clock(31)};Z1 PV;21,5 `,
    'another minute': `2026-01-05T06:01:00;Z1 PV;21,5`,
    'no time': 'n/a;Z1 PV;21,5',
    nothing: '',
  };
  for (const [what, row] of Object.entries(odd))
    expect(await runOver([...rowsOf(30, ''), row, ...rowsOf(32, '')], '', ''), what).toBe(4);
  const bad = [...rowsOf(30, ';Good'), `${clock(31)};Z1 PV;21,5;Bad`, ...rowsOf(32, ';Good')];
  expect(await runOver(bad, ';quality', ';Good')).toBe(4);
});

test('a run ends with the bytes, also where less than a time is left of them', async () => {
  expect(await runOver([...rowsOf(30, ''), 'x'], '', '')).toBe(4);
  expect(await runOver([...rowsOf(30, ''), `${clock(30)}`], '', '')).toBe(4);
});

test('a run stops before a time that is far from the rest', async () => {
  const files = { 'log.csv': ['time;tag;value', ...rowsOf(0, ''), ...rowsOf(1, ''), ''].join('\n') };
  await inFolder(files, async (folder) => {
    const [file] = (await survey([folder])).files;
    const scanner = new RowScanner(file!, 1);
    for (const tag of tags) scanner.addTag(tag);
    const bytes = Buffer.from([...rowsOf(0, ''), ...rowsOf(1, ''), ...rowsOf(2, ''), ...rowsOf(3, ''), ''].join('\n'));
    let start = 0;
    for (let row = 0; row < 8; row++) start = scanner.scan(bytes, start, 0);
    const run = new LongRun(file!, scanner.runParts()!, emptyBatch(100), 100);
    const behind = run.take(bytes, start, bytes.length, 10, (ms) => ms < Date.UTC(2026, 0, 5, 6, 0, 3));
    expect(run.rowCount).toBe(4);
    // The row that stopped it can be read by itself.
    expect(scanner.scan(bytes, behind, 0)).toBeGreaterThan(behind);
    expect(scanner.tag).toBe(0);
  });
});
