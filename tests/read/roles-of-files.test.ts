import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 2, 2, 6);
const rowCount = 200;
const indices = Array.from({ length: rowCount }, (_, i) => i);
const clock = (i: number): string => new Date(startMs + i * 60_000).toISOString().slice(0, 19).replace('T', ' ');
const degC = (z: number, i: number): number => Math.min(150 + z, 24 + z + 3 * i) + (i % 3) / 10;
const setpoint = (z: number): number => 150 + z;
const output = (z: number, i: number): number => 30 + z + (i % 5);

const zoneFile = (value: (z: number, i: number) => number): string =>
  `Time,Zone 1,Zone 2\n${indices.map((i) => `${clock(i)},${value(1, i)},${value(2, i)}`).join('\n')}\n`;
const tagFile = (value: (i: number) => number): string =>
  `Timestamp,Value\n${indices.map((i) => `${clock(i)},${value(i)}`).join('\n')}\n`;

const folders: readonly (readonly [string, Readonly<Record<string, string>>])[] = [
  ['a file for each role', { 'PV.csv': zoneFile(degC), 'SP.csv': zoneFile(setpoint), 'OUT.csv': zoneFile(output) }],
  [
    'the readings in a file that says nothing',
    {
      'temperatures.csv': zoneFile(degC),
      'setpoints_2026-03-02.csv': zoneFile(setpoint),
      'Output.csv': zoneFile(output),
    },
  ],
  [
    'a file for each tag',
    Object.fromEntries(
      [1, 2].flatMap((z) => [
        [`Zone ${z} PV.csv`, tagFile((i) => degC(z, i))],
        [`Zone ${z} SP.csv`, tagFile(() => setpoint(z))],
        [`Zone ${z} OUT.csv`, tagFile((i) => output(z, i))],
      ]),
    ),
  ],
];

describe('roles in the names of files', () => {
  test.each(folders)('%s', async (_, files) => {
    const { zones, found } = await pourFiles(files);
    expect(zones.map(({ name }) => name).sort()).toEqual(['Zone 1', 'Zone 2']);
    expect(found.problems.filter(({ code }) => code === 'ambiguous-layout')).toEqual([]);
    for (const zone of zones) {
      const z = Number(zone.name.at(-1));
      expect(zone.readingDegC).toEqual(indices.map((i) => degC(z, i)));
      expect(new Set(zone.setpointDegC)).toEqual(new Set([setpoint(z)]));
      expect(zone.outputPercent).toEqual(indices.map((i) => output(z, i)));
    }
  });

  test('set points that were written once stand for their zones', async () => {
    const once = `Time,Zone,Set point\n${[1, 2].map((z) => `${clock(0)},Zone ${z},${setpoint(z)}`).join('\n')}\n`;
    const { zones } = await pourFiles({ 'temps.csv': zoneFile(degC), 'setpoints.csv': once });
    expect(zones.map(({ setpointDegC }) => setpointDegC[150])).toEqual([151, 152]);
  });

  test.each(['output.csv', 'heater log.csv', 'data set.csv', 'power.csv'])(
    'a file called "%s" holds readings where no other does',
    async (name) => {
      const { zones } = await pourFiles({ [name]: zoneFile(degC) });
      expect(zones.map((zone) => [zone.name, zone.readingDegC.length])).toEqual([
        ['Zone 1', rowCount],
        ['Zone 2', rowCount],
      ]);
    },
  );
});

test('flags of a broken sensor are no zones', async () => {
  const rows = indices.map((i) => `${clock(i)},${degC(1, i)},${i % 50 < 3 ? 1 : 0}`);
  const { zones } = await pourFiles({ 'log.csv': `Time,Zone 1 PV,Zone 1 sensor break\n${rows.join('\n')}\n` });
  expect(zones.map(({ name }) => name)).toEqual(['Zone 1']);
});

test('a plant that only cools to 55 is one in °C where its open inputs read 850', async () => {
  const warm = (z: number, i: number): number => 55 + z + Math.min(100, Math.max(0, i - 30)) + (i % 3) / 10;
  const rows = indices.map((i) => `${clock(i)},${i % 60 < 3 ? '850.0' : warm(1, i)},${warm(2, i)}`);
  const { found } = await pourFiles({ 'log.csv': `Time,Zone 1 PV,Zone 2 PV\n${rows.join('\n')}\n` });
  expect(found.files[0]!.columns.map(({ unit }) => unit)).toEqual([null, 'degC', 'degC']);
});
