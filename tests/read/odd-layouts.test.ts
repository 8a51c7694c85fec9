import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { survey, type SurveyOptions } from '../../src/read/survey/survey.js';

const folder = mkdtempSync(join(tmpdir(), 'looselead-odd-'));
afterAll(() => rmSync(folder, { recursive: true }));
let count = 0;

async function look(text: string, options: SurveyOptions = {}, name = `log ${++count}.csv`) {
  const file = join(folder, name);
  writeFileSync(file, text);
  return survey([file], options);
}

const rowCount = 120;
const clock = (i: number) =>
  `30.12.2025 ${String(8 + Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}:00`;
/** Reading of zone z in row i: heats from the hall to its set point, then stands. */
const degC = (z: number, i: number) => Math.min(150 + z, 24 + z + 3 * i) + (i % 3) / 10;

describe('long logs in many languages', () => {
  test.each([
    ['Data;Variabile;Valore;Qualità', 'Zona', '192'],
    ['Czas;Nazwa;Wartość;Jakość', 'Strefa', '192'],
    ['Fecha;Nombre;Valor;Estado', 'Zona', 'OK'],
    ['Zeitstempel;Bezeichnung;Wert;Status', 'Zone', '0'],
    ['Horodatage;Nom;Valeur;Qualité', 'Zone', '192'],
    ['Kaj;Blabo;Firno;Nulo', 'Zone', '192'],
    ['', 'Zone', '192'],
  ])('%s', async (header, word, quality) => {
    const rows = Array.from({ length: rowCount }, (_, i) =>
      [1, 2].flatMap((z) =>
        [
          ['PV', degC(z, i)],
          ['SP', 150 + z],
          ['OUT', 40 + z],
        ].map(
          ([role, value]) =>
            `${clock(i)};${word} ${z} ${role};${Number(value).toFixed(1).replace('.', ',')};${quality}`,
        ),
      ),
    ).flat();
    const { files, zones } = await look(`${header === '' ? '' : `${header}\n`}${rows.join('\n')}\n`);
    expect(files[0]).toMatchObject({ kind: 'temperature', layout: 'long' });
    expect(zones.map(({ name, has }) => [name, has.reading && has.setpoint && has.output])).toEqual([
      [`${word} 1`, true],
      [`${word} 2`, true],
    ]);
  });
});

test('zones that are bare numbers are named with the word above them', async () => {
  const rows = Array.from({ length: rowCount }, (_, i) =>
    [1, 2].map((z) => `${clock(i)};${z};${degC(z, i)};${150 + z};40`),
  ).flat();
  const { zones } = await look(`time;zone;pv;sp;out\n${rows.join('\n')}\n`);
  expect(zones.map(({ name, has }) => [name, has.setpoint, has.output])).toEqual([
    ['zone 1', true, true],
    ['zone 2', true, true],
  ]);
});

test('a value that two columns name together is refused with the reason', async () => {
  const rows = Array.from({ length: rowCount }, (_, i) =>
    [1, 2].flatMap((z) => [`${clock(i)};Zone ${z};PV;${degC(z, i)}`, `${clock(i)};Zone ${z};SP;${150 + z}`]),
  ).flat();
  const { zones, problems } = await look(`time;zone;parameter;value\n${rows.join('\n')}\n`);
  expect(zones).toEqual([]);
  expect(problems.map(({ what }) => what).join()).toContain('named by columns "zone" and "parameter" together');
});

const wide = (i: number) => [1, 2].map((z) => degC(z, i).toFixed(1)).join(';');

test('units in brackets in a row of their own count', async () => {
  const rows = Array.from({ length: rowCount }, (_, i) => `${clock(i)};${wide(i)}`);
  const { files } = await look(`Time;Zone 1 PV;Zone 2 PV\n;[°F];[°F]\n${rows.join('\n')}\n`);
  expect(files[0]!.columns.map(({ unit }) => unit)).toEqual([null, 'degF', 'degF']);
});

test('a plant that only heats up through 67 degrees is not taken for a hall in °F', async () => {
  const rows = Array.from(
    { length: rowCount },
    (_, i) => `${clock(i)};${[1, 2].map((z) => 27 + z + 8 * Math.min(i, 15)).join(';')}`,
  );
  const { files } = await look(`Time;Zone 1 PV;Zone 2 PV\n${rows.join('\n')}\n`);
  expect(files[0]!.columns[1]!.unit).toBe('degC');
});

describe('names for a file without a header', () => {
  const text = Array.from({ length: rowCount }, (_, i) => `${clock(i)};${wide(i)}\n`).join('');
  test('are taken when there is one for each column', async () => {
    const { zones } = await look(text, { names: ['Time', 'Left jaw PV', 'Right jaw PV'] });
    expect(zones.map(({ name }) => name)).toEqual(['Left jaw', 'Right jaw']);
  });
  test.each([[['Left jaw PV', 'Right jaw PV']], [['Time', 'Left', 'Right', 'More']]])(
    '%j are refused',
    async (names) => {
      const { zones, problems } = await look(text, { names });
      expect(zones.map(({ name }) => name)).toEqual(['Column 2', 'Column 3']);
      expect(problems[0]).toMatchObject({ code: 'bad-argument' });
      expect(problems[0]!.what).toContain(`3 columns, but --names gives ${names.length} names`);
    },
  );
});

test.each(['Messstelle: Heizkanal 1', 'Voie: Heizkanal 1', 'Sonda; Heizkanal 1', '# Zona: Heizkanal 1'])(
  'a line above the header names the zone: %s',
  async (line) => {
    const rows = Array.from({ length: rowCount }, (_, i) => `${clock(i)};${degC(1, i)};151`);
    const { zones } = await look(`${line}\nZeit;Istwert;Sollwert\n${rows.join('\n')}\n`);
    expect(zones.map(({ name }) => name)).toEqual(['Heizkanal 1']);
  },
);
