import { describe, expect, test } from 'vitest';
import { machineOfPreamble } from '../../src/read/names/machine-name.js';
import { inFolder, pourFiles, pourPaths } from './poured.js';

// Lines above a header as exports have them (common practice); names are invented.
describe('a line above the header names the machine', () => {
  test.each([
    ['Machine: Lid press 2', 'Lid press 2'],
    ['Anlage; Deckelpresse Ost; ', 'Deckelpresse Ost'],
    ['# Línea: Norte 4', 'Norte 4'],
    ['Ligne : Barquettes Nord', 'Barquettes Nord'],
    ['Line,3,,,', 'Line 3'],
    ['Maschine Nr.: 12', 'Maschine 12'],
    ['Machine stopped: yes', null],
    ['Line speed: 12 m/min', null],
    ['Export from 02.11.2026', null],
  ])('%s', (line, machine) => {
    expect(machineOfPreamble(['Export', line])).toBe(machine);
  });

  test('and keeps the same zone names of two machines apart', async () => {
    const log = (machine: string, more: number) =>
      [
        `Machine: ${machine}`,
        '',
        'time,Zone 1 °C,Zone 2 °C',
        ...Array.from(
          { length: 60 },
          (_, i) => `2026-03-01 08:${String(i).padStart(2, '0')}:00,${150 + more},${151.5 + more}`,
        ),
      ].join('\n');
    const { zones } = await inFolder({ 'a.csv': log('Lid press', 0), 'b.csv': log('Tray press', 9) }, (folder) =>
      pourPaths([folder]),
    );
    expect(zones.map(({ machine, name, readingDegC }) => [machine, name, readingDegC[0]])).toEqual([
      ['Lid press', 'Lid press Zone 1', 150],
      ['Lid press', 'Lid press Zone 2', 151.5],
      ['Tray press', 'Tray press Zone 1', 159],
      ['Tray press', 'Tray press Zone 2', 160.5],
    ]);
  });
});

test('a part of a path of tags names the machine', async () => {
  const tags = ['Plant/Line 1/Zone 1/PV', 'Plant/Line 2/Zone 1/PV'];
  const rows = Array.from({ length: 60 }, (_, i) =>
    tags.map((tag) => `${tag},2026-09-06 06:00:${String(i).padStart(2, '0')},15${i % 7}.5`),
  );
  const { found } = await pourFiles({ 'log.csv': `name,t,v\n${rows.flat().join('\n')}\n` });
  expect(found.zones.map(({ machine }) => machine)).toEqual(['Line 1', 'Line 2']);
});
