import { describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const rowCount = 60;
const clock = (i: number): string => `2026-03-02 06:${String(i).padStart(2, '0')}:00`;
const text = (above: readonly string[], row: (i: number) => string): string =>
  [...above, ...Array.from({ length: rowCount }, (_, i) => row(i))].join('\n') + '\n';
const blanks = (i: number): string => `${clock(i)}   ${100 + i / 10}   ${200 + i / 10}`;

describe('names over columns that blanks part', () => {
  test.each([
    ['one name over date and clock', ['Time                 Z1      Z2']],
    ['with units below', ['Time                 Z1      Z2', '                     °C      °C']],
    ['below a title', ['Heater trend of line 4', '', 'Time                 Z1      Z2']],
    ['names of two words', ['Time                 Zone 1  Zone 2']],
    ['a name for the clock, too', ['Date        Time     Z1 [°C]  Z2 [°C]']],
    ['a line drawn below them', ['Time                 Z1      Z2', '-------------------  ------  ------']],
  ])('%s', async (_, above) => {
    const { zones } = await pourFiles({ 'log.txt': text(above, blanks) });
    expect(zones.map(({ name, readingDegC }) => [name.at(-1), readingDegC[0], readingDegC.length])).toEqual([
      ['1', 100, rowCount],
      ['2', 200, rowCount],
    ]);
  });

  test('a tag and a value in each row', async () => {
    const rows = text(['Time Tag Value'], (i) => `${clock(i)} Z1 ${100 + i / 10}\n${clock(i)} Z2 ${200 + i / 10}`);
    const { zones } = await pourFiles({ 'log.txt': rows });
    expect(zones.map(({ name, readingDegC }) => [name, readingDegC[0]])).toEqual([
      ['Z1', 100],
      ['Z2', 200],
    ]);
  });
});

test('a line drawn below names that pipes part', async () => {
  const above = ['Time | Z1 | Z2', '-----+----+----'];
  const { zones } = await pourFiles({ 'log.txt': text(above, (i) => `${clock(i)} | ${100 + i} | ${200 + i}`) });
  expect(zones.map(({ name }) => name)).toEqual(['Z1', 'Z2']);
});

test('names behind a path', async () => {
  const names = ['PV', 'SP'].map((role) => `\\\\PLANT\\Line 4\\Front jaw\\${role}`);
  const { zones } = await pourFiles({
    'log.csv': text([`Time,${names.join(',')}`], (i) => `${clock(i)},${150 + (i % 9)},155`),
  });
  expect(zones.map(({ name, setpointDegC }) => [name, setpointDegC[0]])).toEqual([['PLANT\\Line 4\\Front jaw', 155]]);
});

test('a folder for each zone, in files that have no name but their date', async () => {
  const file = (from: number): string => text(['time,PV,SP'], (i) => `${clock(i)},${from + i / 10},${from}`);
  const { zones, found } = await pourFiles({
    'Top left/2026-03-02.csv': file(150),
    'Top right/2026-03-02.csv': file(160),
    'Bottom/2026-03-02.csv': file(170),
    'Bottom/2026-03-03.csv': file(171).replaceAll('2026-03-02', '2026-03-03'),
  });
  const seen = zones.map(({ name, readingDegC, setpointDegC }) => [name, readingDegC[0], setpointDegC[0]]);
  expect(seen.sort((a, b) => Number(a[1]) - Number(b[1]))).toEqual([
    ['Top left', 150, 150],
    ['Top right', 160, 160],
    ['Bottom', 170, 170],
  ]);
  expect(found.problems.filter(({ code }) => code === 'ambiguous-layout')).toEqual([]);
});
