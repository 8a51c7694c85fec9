import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { expect, test } from 'vitest';
import { readParquetRows } from '../../src/read/sources/parquet-rows.js';
import { readTable, sampleTable } from '../../src/read/sources/table-source.js';
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
    const ref = { path: join(folder, 'log.parquet'), name: 'log.parquet', part: null, container: 'parquet' as const };
    const seen: number[] = [];
    let nextLine = 1;
    for await (const { firstLine, rows } of readTable(ref)) {
      expect(firstLine).toBe(nextLine);
      nextLine += rows.length;
      seen.push(...rows.map((cells) => Number(cells[1])));
    }
    expect(seen.slice(1)).toEqual(columnData[1]!.data);
    const lines = (await sampleTable(ref)).map(({ line, cells }) => [line, cells[1]]);
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

async function rowCount(parts: ReturnType<typeof readParquetRows>): Promise<number> {
  let count = 0;
  for await (const { rows } of parts) count += rows.length;
  return count;
}
