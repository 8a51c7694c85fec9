import { expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 8, 6);
const rows = (separator: string, cells: (i: number) => readonly (string | number)[]): string =>
  Array.from({ length: 100 }, (_, i) => {
    const time = new Date(startMs + i * 10_000).toISOString().slice(0, 19).replace('T', ' ');
    return [time, ...cells(i)].join(separator);
  }).join('\n');
const cells = (i: number) => [150 + (i % 7), 150, 30, 160 + (i % 5), 160, 40];

test.each([
  ['merged cells above roles', ',Zone 1,,,Zone 2,,\nTime,PV,SP,OUT,PV,SP,OUT\n', ',', ['Zone 1', 'Zone 2']],
  [
    'a title above both, groups in every column, a row of units',
    'Heizzonen KW 36;;;;;;\nZeit;vorn;vorn;vorn;hinten;hinten;hinten\n;Ist;Soll;Stellgrad;Ist;Soll;Stellgrad\n;°C;°C;%;°C;°C;%\n',
    ';',
    ['vorn', 'hinten'],
  ],
])('names in two rows: %s', async (_, header, separator, names) => {
  const { found, zones } = await pourFiles({ 'log.csv': `${header}${rows(separator, cells)}\n` });
  expect(found.zones.map(({ name }) => name)).toEqual(names);
  expect(found.zones.every(({ has }) => has.setpoint && has.output)).toBe(true);
  expect(zones[1]!.readingDegC.slice(0, 3)).toEqual([160, 161, 162]);
  expect(zones[1]!.setpointDegC[0]).toBe(160);
  expect(zones[1]!.timeMs).toHaveLength(100);
});

test('the same names again without any above: the second of each makes the second zone', async () => {
  const { found, zones } = await pourFiles({ 'log.csv': `Time,PV,SP,OUT,PV,SP,OUT\n${rows(',', cells)}\n` });
  expect(found.zones.map(({ name }) => name)).toEqual(['Zone 1', 'Zone 2']);
  expect(zones.map(({ setpointDegC, outputPercent }) => [setpointDegC[0], outputPercent[0]])).toEqual([
    [150, 30],
    [160, 40],
  ]);
});

test('a line above the header that names no groups stays a preamble', async () => {
  const text = `Plant,North,Shift,2\nTime,Z1 PV,Z1 SP,Z2 PV\n${rows(',', (i) => [150 + (i % 7), 150, 160 + (i % 5)])}\n`;
  const { found } = await pourFiles({ 'log.csv': text });
  expect(found.zones.map(({ name }) => name)).toEqual(['Z1', 'Z2']);
});

const readings = (i: number) => [150 + (i % 7), 160 + (i % 5), 170 + (i % 3)];

test.each([
  ['above the channels', ',Feed,Metering,Die\nTime,CH1,CH2,CH3\n'],
  ['above, with a word for the row and units', 'Tag,Feed,Metering,Die\nCh.,CH001,CH002,CH003\nUnit,degC,degC,degC\n'],
  ['below the channels', 'Time,CH1,CH2,CH3\n,Feed,Metering,Die\n'],
  ['above a header without names', 'Recorder,4\nCh No.,CH1,CH2,CH3\nTag,Feed,Metering,Die\nUnit,C,C,C\nTime,,,\n'],
])('names of a recorder page stand %s', async (_, header) => {
  const { found, zones } = await pourFiles({ 'page.csv': `${header}${rows(',', readings)}\n` });
  expect(found.zones.map(({ name }) => name)).toEqual(['Feed', 'Metering', 'Die']);
  expect(zones[2]!.readingDegC.slice(0, 3)).toEqual([170, 171, 172]);
});

test.each(['Plant,North,Shift,2\n', 'Run,,,\n', ',Feed,,\n'])(
  'a line above that names no channels leaves them their numbers: %j',
  async (line) => {
    const { found } = await pourFiles({ 'page.csv': `${line}Time,CH1,CH2,CH3\n${rows(',', readings)}\n` });
    expect(found.zones.map(({ name }) => name)).toEqual(['CH1', 'CH2', 'CH3']);
  },
);
