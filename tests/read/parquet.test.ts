import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { expect, test } from 'vitest';
import { readParquetRows } from '../../src/read/sources/parquet-rows.js';
import type { RowSource } from '../../src/read/sources/table-part.js';
import { readTable, sampleTable } from '../../src/read/sources/read-table.js';
import { runsOf } from '../make/runs.js';
import { inFolder, pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 0, 5);

test('reads times, doubles, texts and missing values of a Parquet file', async () => {
  const rows = 300;
  const at = Array.from({ length: rows }, (_, row) => new Date(startMs + row * 10_000));
  const degC = at.map((_, row) => (row === 7 ? null : 22 + row / 10));
  const columnData = [
    { name: 'timestamp', data: at, type: 'TIMESTAMP' as const },
    { name: 'Zone 1 PV', data: degC, type: 'DOUBLE' as const, nullable: true },
    { name: 'State', data: at.map((_, row) => (row < 100 ? 'STOP' : 'RUN')), type: 'STRING' as const },
  ];
  const { zones, found } = await pourFiles({ 'log.parquet': new Uint8Array(parquetWriteBuffer({ columnData })) });
  expect(found.files[0]).toMatchObject({ container: 'parquet', kind: 'temperature', samplingMs: 10_000 });
  expect(zones.map((zone) => zone.name)).toEqual(['Zone 1']);
  expect(zones[0]!.timeMs).toEqual(at.map((date) => date.getTime()));
  expect(zones[0]!.readingDegC[50]).toBeCloseTo(27, 9);
  expect([zones[0]!.state[6], zones[0]!.state[7]]).toEqual([0, 1]);
  expect([zones[0]!.running[99], zones[0]!.running[100]]).toEqual([0, 1]);
});

test('a small file that says it holds many cells is refused, not unfolded', async () => {
  const data = new Array<number>(20_000).fill(1.5);
  const columnData = Array.from({ length: 5 }, (_, i) => ({ name: `Z${i}`, data, type: 'DOUBLE' as const }));
  const bytes = new Uint8Array(parquetWriteBuffer({ columnData, rowGroupSize: 20_000 }));
  expect(bytes.length).toBeLessThan(5000);
  await inFolder({ 'log.parquet': bytes }, async (folder) => {
    const path = join(folder, 'log.parquet');
    expect(await rowCount(readParquetRows(path, bytes.length, null, 100_000))).toBe(20_000);
    await expect(rowCount(readParquetRows(path, bytes.length, null, 99_999))).rejects.toThrow('more than 99999 cells');
  });
});

test('row groups come one after the other, and the sample holds the first and the last rows', async () => {
  const columnData = [
    { name: 'time', data: Array.from({ length: 5000 }, (_, i) => new Date(startMs + i * 1000)) },
    { name: 'Z1 PV', data: Array.from({ length: 5000 }, (_, i) => i / 10), type: 'DOUBLE' as const },
  ];
  const bytes = new Uint8Array(parquetWriteBuffer({ columnData, rowGroupSize: 700 }));
  await inFolder({ 'log.parquet': bytes }, async (folder) => {
    const source: RowSource = {
      ...{ path: join(folder, 'log.parquet'), name: 'log.parquet', part: null, container: 'parquet' },
      ...{ encoding: 'utf-8', dialect: { separator: ',', decimal: '.', thousands: '', quote: '"' } },
    };
    const seen: number[] = [];
    let nextLine = 1;
    for await (const { line, cells } of readTable(source)) {
      expect(line).toBe(nextLine++);
      seen.push(Number(cells[1]));
    }
    expect(seen.slice(1)).toEqual(columnData[1]!.data);
    const lines = (await sampleTable(source)).map(({ line, cells }) => [line, cells[1]]);
    expect([lines[0], lines[1], lines.at(-1)]).toEqual([
      [1, 'Z1 PV'],
      [2, '0'],
      [5001, '499.9'],
    ]);
  });
});

test.each([
  ['instants', true, startMs],
  ['times of a clock on the wall', false, Date.UTC(2026, 0, 4, 23)],
])('timestamps that are %s (Parquet LogicalTypes.md, isAdjustedToUTC)', async (_, isAdjustedToUTC, firstMs) => {
  const data = Array.from({ length: 50 }, (_, i) => new Date(startMs + i * 10_000));
  const schema: Parameters<typeof parquetWriteBuffer>[0]['schema'] = [
    { name: 'root', num_children: 2 },
    {
      ...{ name: 'time', type: 'INT64', repetition_type: 'REQUIRED' },
      logical_type: { type: 'TIMESTAMP', isAdjustedToUTC, unit: 'MILLIS' },
    },
    { name: 'Z1 PV', type: 'DOUBLE', repetition_type: 'REQUIRED' },
  ];
  const columnData = [
    { name: 'time', data },
    { name: 'Z1 PV', data: data.map((_, i) => 150 + i / 10) },
  ];
  const bytes = new Uint8Array(parquetWriteBuffer({ columnData, schema }));
  const { zones } = await pourFiles({ 'log.parquet': bytes, 'plant.yaml': 'timezone: Europe/Oslo\n' });
  expect(zones[0]!.timeMs[0]).toBe(firstMs);
});

test.each([
  ['GZIP', gzipSync],
  ['BROTLI', brotliCompressSync],
] as const)('a file packed with %s', async (codec, pack) => {
  const columnData = [
    { name: 'time', data: Array.from({ length: 500 }, (_, i) => new Date(startMs + i * 10_000)) },
    { name: 'Z1 PV', data: Array.from({ length: 500 }, (_, i) => 150 + i / 10), type: 'DOUBLE' as const },
  ];
  const compressors = { [codec]: (bytes: Uint8Array) => new Uint8Array(pack(bytes)) };
  const bytes = new Uint8Array(parquetWriteBuffer({ columnData, codec, compressors }));
  const { zones } = await pourFiles({ 'log.parquet': bytes });
  expect(zones[0]!.readingDegC[499]).toBeCloseTo(199.9, 9);
});

test('lists in a cell become a text and do not stop the reading', async () => {
  const columnData = [
    { name: 'time', data: Array.from({ length: 50 }, (_, i) => new Date(startMs + i * 10_000)) },
    { name: 'Z1 PV', data: Array.from({ length: 50 }, (_, i) => 150 + i / 10), type: 'DOUBLE' as const },
    { name: 'notes', data: Array.from({ length: 50 }, (_, i) => ({ a: i, b: [1, 2] })), type: 'JSON' as const },
  ];
  const { zones } = await pourFiles({ 'log.parquet': new Uint8Array(parquetWriteBuffer({ columnData })) });
  expect(zones.map(({ name, readingDegC }) => [name, readingDegC.length])).toEqual([['Z1', 50]]);
});

const odd = fc.constantFrom(null, NaN, Infinity, -0, 0, 1e-9, -200, 850, 3276.7, 1e20);
const cells = fc.record({
  doubles: fc.oneof({ weight: 9, arbitrary: fc.double({ min: -300, max: 900, noNaN: true }) }, odd),
  floats: fc.float({ min: 0, max: 400, noNaN: true }),
  output: fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 100 }) }, fc.constant(null)),
  running: fc.integer({ min: 0, max: 1 }),
  quality: fc.constantFrom(192, 192, 192, 0),
  stepMs: fc.oneof({ weight: 20, arbitrary: fc.constant(10_000) }, fc.constantFrom(0, -30_000, 3e11)),
});

test('numbers are poured as they are, and give what their texts give', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(cells, { maxLength: 60 }),
      fc.constantFrom(7, 1000),
      fc.boolean(),
      async (rows, rowGroupSize, isLong) => {
        const clean = { doubles: 150.1, floats: 21.5, output: 30, running: 1, quality: 192, stepMs: 10_000 };
        const all = [...new Array<typeof clean>(30).fill(clean), ...rows];
        let ms = startMs;
        const time = all.map(({ stepMs }) => new Date((ms += stepMs)));
        const column = (name: string, key: keyof typeof clean, type: 'DOUBLE' | 'FLOAT' | 'INT32') => {
          const data = all.map((row) => row[key]);
          return { name, data, type, nullable: data.includes(null as never) };
        };
        const columnData = isLong
          ? [
              { name: 'time', data: time },
              { name: 'tag', data: all.map((_, i) => `Zone ${i % 3} PV`) },
              column('value', 'doubles', 'DOUBLE'),
              column('quality', 'quality', 'INT32'),
            ]
          : [
              { name: 'time', data: time },
              column('Z1 PV', 'doubles', 'DOUBLE'),
              column('Z2 PV', 'floats', 'FLOAT'),
              column('Z1 OUT', 'output', 'INT32'),
              column('Running', 'running', 'INT32'),
            ];
        const bytes = new Uint8Array(parquetWriteBuffer({ columnData, rowGroupSize }));
        const files = { 'log.parquet': bytes };
        const direct = await pourFiles(files);
        const asTexts = await pourFiles(files, {}, { isFast: false });
        expect(direct.zones.reduce((sum, zone) => sum + zone.timeMs.length, 0)).toBeGreaterThanOrEqual(30);
        expect(direct.zones).toEqual(asTexts.zones);
        const told = ({ result }: typeof direct): unknown => [
          result.sources.map((source) => ({ ...source, file: '' })),
          result.problems.map((problem) => ({ ...problem, file: '' })),
          [...result.examples.values()],
        ];
        expect(told(direct)).toEqual(told(asTexts));
      },
    ),
    { numRuns: runsOf(5, 12), seed: 5 },
  );
});

async function rowCount(parts: ReturnType<typeof readParquetRows>): Promise<number> {
  let count = 0;
  for await (const part of parts) count += part.count;
  return count;
}

test('tags that stand one after the other are sorted by time, though only the ends were sampled', async () => {
  const rows = ['Z1 PV', 'Z1 SP', 'Z2 PV'].flatMap((tag) =>
    Array.from({ length: 2000 }, (_, i) => ({ time: new Date(startMs + i * 10_000), tag, value: 150 + (i % 7) / 10 })),
  );
  const columnData = [
    { name: 'time', data: rows.map(({ time }) => time) },
    { name: 'tag', data: rows.map(({ tag }) => tag), type: 'STRING' as const, encoding: 'RLE_DICTIONARY' as const },
    { name: 'value', data: rows.map(({ value }) => value), type: 'DOUBLE' as const },
  ];
  const { zones, result } = await pourFiles({
    'log.parquet': new Uint8Array(parquetWriteBuffer({ columnData, rowGroupSize: 1500 })),
  });
  expect(zones.map(({ name, timeMs }) => [name, timeMs.length])).toEqual([
    ['Z1', 2000],
    ['Z2', 2000],
  ]);
  expect(result.sources[0]).toMatchObject({ rowsRejected: 0 });
});
