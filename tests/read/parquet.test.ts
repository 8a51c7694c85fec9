import { join } from 'node:path';
import { parquetWriteBuffer } from 'hyparquet-writer';
import { expect, test } from 'vitest';
import { readParquetRows } from '../../src/read/parquet-rows.js';
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
  const bytes = new Uint8Array(parquetWriteBuffer({ columnData }));
  expect(bytes.length).toBeLessThan(5000);
  await inFolder({ 'log.parquet': bytes }, async (folder) => {
    const path = join(folder, 'log.parquet');
    expect(await readParquetRows(path, bytes.length, 100_000)).toHaveLength(20_001);
    await expect(readParquetRows(path, bytes.length, 99_999)).rejects.toThrow('more than 99999 cells');
  });
});
