import { describe, expect, test } from 'vitest';
import { survey } from '../../src/read/survey/survey.js';
import { inFolder, pourFiles, type Poured } from './poured.js';

const startMs = Date.UTC(2026, 4, 4, 6);
const stepMs = 10_000;
const zoneNames = ['Front jaw', 'Rear jaw', 'Top platen'];

const ms = (row: number): number => startMs + row * stepMs;
const time = (row: number): string => new Date(ms(row)).toISOString().slice(0, 19).replace('T', ' ');
const degC = (row: number, zone: number): number => Math.round(10 * (180 + 10 * zone + Math.sin(row / 9 + zone))) / 10;

/** What was read of a zone must be what was written of it, row by row. */
function expectZones(poured: Poured, rowCount: number, names = zoneNames): void {
  expect(poured.zones.map(({ name }) => name)).toEqual(names);
  const rows = Array.from({ length: rowCount }, (_, row) => row);
  poured.zones.forEach(({ timeMs, readingDegC }, zone) => {
    expect(timeMs).toEqual(rows.map(ms));
    expect(readingDegC).toEqual(rows.map((row) => degC(row, zone)));
  });
}

const rowsOf = (zone: number, rowCount: number, cells: (row: number) => string = (row) => String(degC(row, zone))) =>
  Array.from({ length: rowCount }, (_, row) => `${time(row)},${cells(row)}`);
const text = (lines: readonly string[]): string => `${lines.join('\n')}\n`;
const blocks = (label: (name: string, zone: number) => readonly string[], rowCount: number): string[] =>
  zoneNames.flatMap((name, zone) => [...label(name, zone), ...rowsOf(zone, rowCount)]);

describe('lines between the rows that name the zone of the rows below', () => {
  test.each([
    ['Tag: X above a header', (name: string) => [`Tag: ${name}`, 'Time,PV']],
    ['Tag,X above a header, with a blank line before', (name: string) => ['', `Tag,${name}`, 'Time,PV']],
    ['[X] above a header', (name: string) => [`[${name}]`, 'Time,PV']],
    ['Name: X above a header', (name: string) => [`Name: ${name}`, 'Time,PV']],
  ])('%s', async (_, label) => {
    const poured = await pourFiles({ 'log.csv': text(blocks(label, 300)) }, { unit: 'degC' });
    expectZones(poured, 300);
  });

  test('one header for all, and parts longer than what is looked at', async () => {
    const lines = ['Time,PV', ...blocks((name) => [`Zone: ${name}`], 20_000)];
    expectZones(await pourFiles({ 'log.csv': text(lines) }, { unit: 'degC' }), 20_000);
  });

  test('a number is named by the word before it', async () => {
    const lines = blocks((_, zone) => [`Zone: ${zone + 1}`, 'Time,PV'], 300);
    expectZones(await pourFiles({ 'log.csv': text(lines) }, { unit: 'degC' }), 300, ['Zone 1', 'Zone 2', 'Zone 3']);
  });

  test('columns in another order in each part', async () => {
    const lines = zoneNames.flatMap((name, zone) => {
      const isTurned = zone % 2 === 1;
      const cells = (row: number): string => (isTurned ? `200,${degC(row, zone)}` : `${degC(row, zone)},200`);
      return [`Zone: ${name}`, isTurned ? 'Time,SP,PV' : 'Time,PV,SP', ...rowsOf(zone, 3000, cells)];
    });
    const poured = await pourFiles({ 'log.csv': text(lines) }, { unit: 'degC' });
    expectZones(poured, 3000);
    expect(poured.zones.map(({ setpointDegC }) => setpointDegC.every((it) => it === 200))).toEqual([true, true, true]);
  });

  test('machines, each with all zones', async () => {
    const machine = (name: string, plus: number): string[] => [
      `Machine: ${name}`,
      'Time,Zone 1,Zone 2',
      ...rowsOf(0, 300, (row) => `${degC(row, 0) + plus},${degC(row, 1) + plus}`),
    ];
    const { zones } = await pourFiles(
      { 'log.csv': text([...machine('HS-2', 0), ...machine('HS-3', 40)]) },
      { unit: 'degC' },
    );
    expect(zones.map(({ machine, timeMs }) => [machine, timeMs.length])).toEqual([
      ['HS-2', 300],
      ['HS-2', 300],
      ['HS-3', 300],
      ['HS-3', 300],
    ]);
    expect(Math.min(...zones[2]!.readingDegC)).toBeGreaterThan(Math.max(...zones[0]!.readingDegC));
  });

  test('who works from now on is no zone, and a machine that is named once stays the machine', async () => {
    const lines = ['Machine: HS-2', 'Time,Front jaw PV', ...rowsOf(0, 150), 'Name: B. Example'];
    const more = Array.from({ length: 150 }, (_, i) => `${time(150 + i)},${degC(150 + i, 0)}`);
    const { zones } = await pourFiles({ 'log.csv': text([...lines, ...more, 'Name: C. Example']) }, { unit: 'degC' });
    expect(zones.map(({ name, machine, timeMs }) => [name, machine, timeMs.length])).toEqual([
      ['Front jaw', 'HS-2', 300],
    ]);
  });
});

describe('a sheet with its times across', () => {
  const across = (separator: string, cell: (row: number) => string): string =>
    Array.from({ length: 500 }, (_, row) => cell(row)).join(separator);

  test('tags down', async () => {
    const lines = [`Tag,${across(',', time)}`];
    zoneNames.forEach((name, zone) => lines.push(`${name} PV,${across(',', (row) => String(degC(row, zone)))}`));
    expectZones(await pourFiles({ 'log.csv': text(lines) }, { unit: 'degC' }), 500);
  });

  test('zone, role and unit in cells of their own, dates above clocks, decimal commas', async () => {
    const dates = across(';', (row) => (row === 0 ? '04.05.2026' : ''));
    const lines = [`;;;${dates}`, `;;;${across(';', (row) => time(row).slice(11))}`];
    zoneNames.forEach((name, zone) => {
      lines.push(`${name};Istwert;°C;${across(';', (row) => degC(row, zone).toFixed(1).replace('.', ','))}`);
      lines.push(`;Sollwert;°C;${across(';', () => '200,0')}`);
    });
    const poured = await pourFiles({ 'werte.csv': text(lines) });
    expectZones(poured, 500);
    expect(poured.zones.every(({ setpointDegC }) => setpointDegC.every((it) => it === 200))).toBe(true);
  });

  test('clocks below a line with the date, numbers down', async () => {
    const lines = ['Date: 2026-05-04', `Zone\t${across('\t', (row) => time(row).slice(11))}`];
    for (const zone of [0, 1, 2]) lines.push(`${zone + 1}\t${across('\t', (row) => String(degC(row, zone)))}`);
    expectZones(await pourFiles({ 'log.txt': text(lines) }, { unit: 'degC' }), 500, ['Zone 1', 'Zone 2', 'Zone 3']);
  });

  test('one too wide for a line is refused with what to do', async () => {
    const wide = Array.from({ length: 60_000 }, (_, row) => time(row)).join(',');
    const values = Array.from({ length: 60_000 }, (_, row) => String(degC(row, 0))).join(',');
    const found = await inFolder({ 'log.csv': `Tag,${wide}\nFront jaw PV,${values}\n` }, (folder) => survey([folder]));
    expect(found.zones).toHaveLength(0);
    expect(found.problems[0]!.todo).toMatch(/\w/);
    expect(found.problems[0]!.what).toMatch(/line/);
  });
});
