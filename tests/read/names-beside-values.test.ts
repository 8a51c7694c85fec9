import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 2, 2, 6);
const rowCount = 240;
const indices = Array.from({ length: rowCount }, (_, i) => i);
const degC = (z: number, i: number): number => Math.min(150 + z, 24 + z + 3 * i) + (i % 3) / 10;
const iso = (i: number): string => new Date(startMs + i * 30_000).toISOString();

/** One object with a value for each zone. */
const wide = (i: number): Record<string, unknown> => ({
  time: iso(i),
  ...Object.fromEntries(
    [1, 2].flatMap((z) => [
      [`Zone ${z} PV`, degC(z, i)],
      [`Zone ${z} SP`, 150 + z],
    ]),
  ),
});
const zonesOf = (i: number): object[] => [1, 2].map((z) => ({ name: `Zone ${z}`, pv: degC(z, i), sp: 150 + z }));
const lines = (make: (i: number) => object): string => `${indices.map((i) => JSON.stringify(make(i))).join('\n')}\n`;

const texts: readonly (readonly [string, string, string])[] = [
  ['an object on each line', 'log.jsonl', lines(wide)],
  ['an array', 'log.json', JSON.stringify(indices.map(wide))],
  ['an array over many lines', 'log.json', JSON.stringify(indices.map(wide), null, 2)],
  [
    'an array, an object on each line',
    'log.json',
    `[\n${indices.map((i) => JSON.stringify(wide(i))).join(',\n')}\n]\n`,
  ],
  ['an array within an object', 'log.json', JSON.stringify({ machine: 'Sealer "A" {1}', rows: indices.map(wide) })],
  ['a list of zones in each object', 'log.json', lines((i) => ({ time: iso(i), zones: zonesOf(i) }))],
  [
    'objects within the object',
    'log.json',
    lines((i) => ({
      t: (startMs + i * 30_000) / 1000,
      values: { 'Zone 1': { pv: degC(1, i), sp: 151 }, 'Zone 2': { pv: degC(2, i), sp: 152 } },
    })),
  ],
  [
    'zones by their names within the object',
    'log.json',
    lines((i) => ({
      ts: iso(i),
      zones: { 'Zone 1': { pv: degC(1, i), sp: 151 }, 'Zone 2': { pv: degC(2, i), sp: 152 } },
    })),
  ],
  [
    'names with equal signs',
    'log.txt',
    indices.map((i) => `${iso(i)} z1.pv=${degC(1, i)} z1.sp=151 z2.pv=${degC(2, i)} z2.sp=152`).join('\n'),
  ],
  [
    'a level between the time and the names',
    'log.log',
    indices.map((i) => `${iso(i)} INFO z1.pv=${degC(1, i)} z1.sp=151 z2.pv=${degC(2, i)} z2.sp=152`).join('\n'),
  ],
  [
    'the zone before its values',
    'log.txt',
    indices.map((i) => `[${iso(i)}] Zone 1: PV=${degC(1, i)}C, SP=151C; Zone 2: PV=${degC(2, i)}C, SP=152C`).join('\n'),
  ],
  [
    'a line for each zone',
    'log.txt',
    indices.flatMap((i) => [1, 2].map((z) => `time="${iso(i)}" zone=z${z} pv=${degC(z, i)} sp=${150 + z}`)).join('\n'),
  ],
];

describe('rows that name their values', () => {
  test.each(texts)('%s', async (_, name, text) => {
    const { zones, result } = await pourFiles({ [name]: text });
    expect(zones.map((zone) => zone.name.replace(/^z/, 'Zone '))).toEqual(['Zone 1', 'Zone 2']);
    for (const [z, zone] of zones.entries()) {
      expect(zone.timeMs).toEqual(indices.map((i) => startMs + i * 30_000));
      expect(zone.readingDegC).toEqual(indices.map((i) => degC(z + 1, i)));
      expect(new Set(zone.setpointDegC)).toEqual(new Set([151 + z]));
    }
    expect(result.sources[0]).toMatchObject({ rowsRejected: 0 });
  });

  test('an array in one line that is longer than what is looked at first', async () => {
    const many = Array.from({ length: 6000 }, (_, i) => wide(i));
    const { zones, result } = await pourFiles({ 'log.json': JSON.stringify(many) });
    expect(zones.map(({ timeMs }) => timeMs.length)).toEqual([6000, 6000]);
    expect(result.sources[0]).toMatchObject({ rowsRejected: 0 });
  });

  test('objects nested without end are no columns, and nothing breaks', async () => {
    const deep = `[{"t":1,"a":${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}},{"t":2}]`;
    const { found } = await pourFiles({ 'log.json': deep });
    expect(found.zones).toEqual([]);
  });

  test('packed, and with a byte order mark', async () => {
    const { zones } = await pourFiles({ 'log.jsonl.gz': gzipSync(`\uFEFF${lines(wide)}`) });
    expect(zones.map(({ timeMs }) => timeMs.length)).toEqual([rowCount, rowCount]);
  });

  test('a line that breaks off is left out, counted and shown', async () => {
    const broken = lines(wide)
      .split('\n')
      .map((line, i) => (i === 99 ? line.slice(0, 40) : line))
      .join('\n');
    const { zones, result } = await pourFiles({ 'log.jsonl': broken });
    expect(zones[0]!.timeMs).toHaveLength(rowCount - 1);
    expect(result.sources[0]).toMatchObject({ rowsRejected: 1, rejectedByReason: { 'bad-json': 1 } });
    expect(result.problems.find(({ what }) => what.includes('JSON'))).toMatchObject({ line: 100, count: 1 });
  });

  test('an array that breaks off gives what came before', async () => {
    const { zones, result } = await pourFiles({ 'log.json': JSON.stringify(indices.map(wide)).slice(0, -30) });
    expect(zones[0]!.timeMs).toHaveLength(rowCount - 1);
    expect(result.sources[0]).toMatchObject({ rowsRejected: 1 });
  });

  test('alarms may be objects, too', async () => {
    const alarm = (i: number): object => ({
      time: iso(i * 20 + (i % 2)),
      source: 'Zone 2',
      message: 'Sensor break',
      state: i % 2 === 0 ? 'active' : 'cleared',
    });
    const alarms = indices
      .slice(0, 8)
      .map((i) => JSON.stringify(alarm(i)))
      .join('\n');
    const { found } = await pourFiles({ 'log.jsonl': lines(wide), 'alarms.jsonl': `${alarms}\n` });
    expect(found.files.map(({ kind }) => kind)).toEqual(['temperature', 'alarm']);
  });
});

describe('what is no log is refused with a sentence', () => {
  test.each([
    ['settings.json', '{"unit": "degC", "zones": ["Zone 1", "Zone 2"]}\n', 'no list of objects'],
    ['table.json', '[["time", "z1"], ["2026-03-02T06:00:00Z", 150.1]]', 'no list of objects'],
    ['log.xls', '<html><table><tr><td>Time</td><td>Zone 1</td></tr></table></html>', 'markup'],
    ['log.xml', '<?xml version="1.0"?><log><row/></log>', 'markup'],
  ])('%s', async (name, text, why) => {
    const { found } = await pourFiles({ [name]: text });
    expect(found.zones).toEqual([]);
    expect(found.problems.map(({ what }) => what).join()).toContain(why);
  });
});
