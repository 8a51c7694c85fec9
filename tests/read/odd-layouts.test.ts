import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { pourFiles } from './poured.js';
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

test.each([
  ['Trend export\nPlant: Hall\n\n', ','],
  ['# heater zones\n', ';'],
  ['Data log\n\n', '\t'],
  ['', ','],
])('words in tags do not make messages of a table below %j, separated by %j', async (above, separator) => {
  const american = (i: number) => `12/30/2025 ${1 + Math.floor(i / 60)}:${String(i % 60).padStart(2, '0')}:00 PM`;
  for (const time of [clock, american]) {
    const rows = Array.from({ length: rowCount }, (_, i) =>
      [1, 2].map((z) => [time(i), `Line 1.Värmezon ${z} - Process value`, `${degC(z, i)}\n`].join(separator)).join(''),
    );
    const { zones, files } = await look(`${above}${['DateTime', 'tag', 'value\n'].join(separator)}${rows.join('')}`);
    expect(files[0]).toMatchObject({ kind: 'temperature', layout: 'long' });
    expect(zones.map(({ name }) => name)).toEqual(['Line 1.Värmezon 1', 'Line 1.Värmezon 2']);
  }
});

test.each(['2025-12-30', '30-12-2025', '30/12/2025'])(
  'a day behind a comma is a cell: start and end on %s',
  async (day) => {
    const minute = (i: number) => `${day} 08:${String(i).padStart(2, '0')}:00`;
    const rows = Array.from(
      { length: 50 },
      (_, i) => `${minute(i)},${minute(i + 1)},Zone ${1 + (i % 3)},High temperature`,
    );
    const { files } = await look(`Start,End,Zone,Alarm\n${rows.join('\n')}\n`);
    expect(files[0]).toMatchObject({ kind: 'alarm', header: ['Start', 'End', 'Zone', 'Alarm'] });
  },
);

test.each([
  ['names above them', 'time tag value quality', ['Oven zone 1', 'Oven zone 2']],
  ['nothing above them', '', ['Oven zone 1', 'Oven zone 2']],
])('words between blanks are cells where one column is a value: %s', async (_, above, zoneNames) => {
  const rows = Array.from({ length: rowCount }, (_, i) =>
    [1, 2].map((z) => `${clock(i).replace(' ', 'T')} "Oven zone ${z}" ${degC(z, i)} Good`),
  ).flat();
  const { zones, files } = await look(`${above}\n${rows.join('\n')}\n`);
  expect(files[0]).toMatchObject({ kind: 'temperature', layout: 'long' });
  expect(zones.map(({ name }) => name)).toEqual(zoneNames);
});

test.each([
  ['of one length', ['sensor open', 'sensor closed', 'overheat cleared']],
  ['of one length, with a number', ['high at 190', 'low at 120', 'open at 250']],
  ['of several lengths', ['sensor open', 'reading too high', 'high alarm cleared by hand']],
])('lines of messages are no table: %s', async (_, texts) => {
  const rows = Array.from({ length: 30 }, (_, i) => `${clock(10 * i)} Zone ${1 + (i % 3)} ${texts[i % texts.length]!}`);
  const found = await look(`${rows.join('\n')}\n`);
  expect(found.files[0]).toMatchObject({ kind: 'alarm' });
});

describe('a value that two columns name together', () => {
  const roles = (z: number, i: number) => [
    ['PV', degC(z, i)],
    ['SP', 150 + z],
    ['OUT', 40 + z],
  ];
  test.each([
    ['time;zone;parameter;value', (z: number, role: unknown) => `Zone ${z};${String(role)}`, ['Zone 1', 'Zone 2']],
    ['time;parameter;zone;value', (z: number, role: unknown) => `${String(role)};Zone ${z}`, ['Zone 1', 'Zone 2']],
    ['time;zone;item;value', (z: number, role: unknown) => `${z};${String(role)}`, ['zone 1', 'zone 2']],
    ['time;heizkreis;parameter;value', (z: number, role: unknown) => `Jaw ${z};${String(role)}`, ['Jaw 1', 'Jaw 2']],
  ])('%s', async (header, names, zones) => {
    const rows = Array.from({ length: rowCount }, (_, i) =>
      [1, 2].flatMap((z) => roles(z, i).map(([role, value]) => `${clock(i)};${names(z, role)};${value}`)),
    ).flat();
    const poured = await pourFiles({ 'log.csv': `${header}\n${rows.join('\n')}\n` });
    expect(poured.zones.map(({ name }) => name)).toEqual(zones);
    for (const [z, zone] of poured.zones.entries()) {
      expect(zone.readingDegC).toEqual(Array.from({ length: rowCount }, (_, i) => degC(z + 1, i)));
      expect([zone.setpointDegC[5], zone.outputPercent[5]]).toEqual([151 + z, 41 + z]);
    }
  });
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

describe('times and rows as they are written elsewhere', () => {
  const startMs = Date.UTC(2026, 8, 6, 5);
  const two = (n: number): string => String(n).padStart(2, '0');
  const log = (header: string, time: (t: Date) => string, cells: (i: number) => string): string =>
    `${header}\n${Array.from({ length: 300 }, (_, i) => `${time(new Date(startMs + i * 10_000))}${cells(i)}`).join('\n')}\n`;
  const clock = (t: Date): string => t.toISOString().slice(11, 19);
  const commas = (i: number): string => `;150,${i % 7};160,${i % 5}`;
  const points = (i: number): string => `;150.${i % 7};160.${i % 5}`;
  const ymd = (t: Date): string => t.toISOString().slice(0, 10);

  test.each<[string, string, string]>([
    [
      'blanks behind the dots',
      log(
        'Datum;Z1 PV;Z2 PV',
        (t) => `${t.getUTCDate()}. ${t.getUTCMonth() + 1}. ${t.getUTCFullYear()} ${clock(t)}`,
        commas,
      ),
      'day first',
    ],
    [
      'the year first with two digits, within one day',
      log('Tidpunkt;Z1 PV;Z2 PV', (t) => `${ymd(t).slice(2)} ${clock(t)}`, commas),
      'year first',
    ],
    [
      'day and month alike, decimal commas',
      log('Fecha;Z1 PV;Z2 PV', (t) => `0${t.getUTCDate()}/09/2026 ${clock(t)}`, commas),
      'day first, as goes with decimal commas',
    ],
    [
      'milliseconds in groups of three',
      log('Stamp;Z1 PV;Z2 PV', (t) => t.getTime().toLocaleString('en-US').replaceAll(',', '.'), points),
      'milliseconds since 1970',
    ],
    [
      'compact date and clock in two columns',
      log('DATE;TIME;Z1 PV;Z2 PV', (t) => `${ymd(t).replaceAll('-', '')};${clock(t).replaceAll(':', '')}`, points),
      'the year stands first',
    ],
    [
      'the same without a leading zero',
      log(
        'DATE;TIME;Z1 PV;Z2 PV',
        (t) => `${ymd(t).replaceAll('-', '')};${t.getUTCHours()}${two(t.getUTCMinutes())}${two(t.getUTCSeconds())}`,
        points,
      ),
      'the year stands first',
    ],
  ])('%s', async (_, text, why) => {
    for (const isFast of [true, false]) {
      const { zones, found } = await pourFiles({ 'log.csv': text }, {}, { isFast });
      expect(zones[0]!.timeMs.slice(0, 2)).toEqual([startMs, startMs + 10_000]);
      expect(zones[1]!.timeMs).toHaveLength(300);
      expect(zones[1]!.readingDegC.slice(0, 2)).toEqual([160, 160.1]);
      expect(found.files[0]!.time.why).toContain(why);
      expect(found.problems.filter(({ code }) => code === 'ambiguous-time')).toEqual([]);
    }
  });

  test('the minus of typographers before decimal commas', async () => {
    const { zones } = await pourFiles({
      'log.csv': log(
        'Zeit;Kammer 1 Ist (°C);Kammer 2 Ist (°C)',
        (t) => `${ymd(t)} ${clock(t)}`,
        (i) => `;−25,${i % 7};−5,${i % 5}`,
      ),
    });
    expect(zones[0]!.readingDegC.slice(0, 2)).toEqual([-25, -25.1]);
  });

  test('comments between the rows are counted as comments', async () => {
    const rows = log('Time;Z1 PV;Z2 PV', (t) => `${ymd(t)} ${clock(t)}`, points).split('\n');
    rows.splice(100, 0, '# restarted; by hand', '// settings');
    const { result } = await pourFiles({ 'log.csv': rows.join('\n') });
    expect(result.sources[0]!.rejectedByReason).toEqual({ comment: 2 });
    expect(result.problems[0]!.what).toContain('2 rows were left out because they are comments');
  });

  test('whether the machine runs, in Polish and Czech', async () => {
    for (const [name, runs, stands] of [
      ['Maszyna pracuje', 'TAK', 'NIE'],
      ['Stroj běží', 'ano', 'ne'],
    ]) {
      const text = log(
        `Czas;Z1 PV;Z2 PV;${name}`,
        (t) => `${ymd(t)} ${clock(t)}`,
        (i) => `${points(i)};${i < 100 ? stands : runs}`,
      );
      const { zones } = await pourFiles({ 'log.csv': text });
      expect([zones[0]!.running[0], zones[0]!.running[200]]).toEqual([0, 1]);
    }
  });
});

test('zones that a column of identities tells apart', async () => {
  const text = Array.from({ length: rowCount }, (_, i) =>
    [1, 2].map((z) => `${2 * i + z},${clock(i)},${z},${degC(z, i)},${150 + z}`).join('\n'),
  ).join('\n');
  const { zones } = await look(`id,ts,zone_id,temp_actual,temp_set\n${text}\n`);
  expect(zones.map(({ name, has }) => [name, has.setpoint])).toEqual([
    ['zone 1', true],
    ['zone 2', true],
  ]);
});

test('rows that say other values at the same time are told as such', async () => {
  const text = Array.from({ length: rowCount }, (_, i) =>
    [1, 2].map((z) => `${clock(i)},${z === 1 ? 'p' : 'q'},${degC(3 * z, i)}`).join('\n'),
  ).join('\n');
  const { result } = await pourFiles({ 'log.csv': `Time,Kolub,Temperature\n${text}\n` });
  const told = result.problems.find(({ code }) => code === 'repeated-rows')!;
  expect(told.count).toBe(rowCount);
  expect(told.what).toContain('Most of them say other values');
});

describe('machines in a column of their own', () => {
  const moment = (i: number): string => new Date(Date.UTC(2026, 2, 2, 6) + i * 60_000).toISOString().slice(0, 19);
  const each = <T>(row: (i: number, m: number, z: number) => T): T[] =>
    Array.from({ length: rowCount }, (_, i) => [1, 2].flatMap((m) => [1, 2].map((z) => row(i, m, z)))).flat();
  const all = [
    ['Sealer A', 180],
    ['Sealer A', 181],
    ['Sealer B', 190],
    ['Sealer B', 191],
  ];

  test.each([
    [
      'beside zones, with a column for each role',
      'time;machine;zone;pv;sp',
      each(
        (i, m, z) => `${moment(i)};Sealer ${'AB'[m - 1]!};Zone ${z};${170 + 10 * m + z + (i % 4)};${169 + 10 * m + z}`,
      ),
    ],
    [
      'beside tags and values',
      'time;line;tag;value',
      each((i, m, z) => [
        `${moment(i)};Sealer ${'AB'[m - 1]!};Zone ${z} PV;${170 + 10 * m + z + (i % 4)}`,
        `${moment(i)};Sealer ${'AB'[m - 1]!};Zone ${z} SP;${169 + 10 * m + z}`,
      ]).flat(),
    ],
    [
      'beside a column for each zone',
      'time;machine;Zone 1 PV;Zone 1 SP;Zone 2 PV;Zone 2 SP',
      each((i, m, z) =>
        z === 2
          ? []
          : [
              `${moment(i)};Sealer ${'AB'[m - 1]!};${[1, 2].map((k) => `${170 + 10 * m + k + (i % 4)};${169 + 10 * m + k}`).join(';')}`,
            ],
      ).flat(),
    ],
  ])('%s', async (_, header, rows) => {
    for (const isFast of [true, false]) {
      const { zones, result } = await pourFiles({ 'log.csv': `${[header, ...rows].join('\n')}\n` }, {}, { isFast });
      expect(zones.map(({ machine, setpointDegC }) => [machine, setpointDegC[0]])).toEqual(all);
      expect(zones.map(({ timeMs }) => timeMs.length)).toEqual([rowCount, rowCount, rowCount, rowCount]);
      expect(result.problems.filter(({ code }) => code === 'repeated-rows')).toEqual([]);
    }
  });

  test('as numbers beside numbers of zones', async () => {
    const rows = each((i, m, z) => `${moment(i)},${m},${z},${170 + 10 * m + z + (i % 4)},${169 + 10 * m + z}`);
    const { zones } = await pourFiles({ 'log.csv': `ts,machine_id,zone_id,temp,setpoint\n${rows.join('\n')}\n` });
    expect(zones.map(({ machine, setpointDegC }) => [machine, setpointDegC[0]])).toEqual([
      ['machine 1', 180],
      ['machine 1', 181],
      ['machine 2', 190],
      ['machine 2', 191],
    ]);
  });
});

test('rows of words among rows of numbers are left out and counted; a bad input in all columns is none of them', async () => {
  const rows = Array.from({ length: rowCount }, (_, i) =>
    i === 50
      ? `${clock(i)};STATE CHANGE;IDLE -> RUN`
      : i === 60
        ? `${clock(i)};Bad;Bad`
        : i === 70
          ? `${clock(i)};E-77;E-77`
          : `${clock(i)};${degC(1, i)};${degC(2, i)}`,
  );
  for (const isFast of [true, false]) {
    const { result, zones } = await pourFiles({ 'log.csv': `Time;Z1 PV;Z2 PV\n${rows.join('\n')}\n` }, {}, { isFast });
    expect(result.sources[0]!.rejectedByReason).toEqual({ 'text-row': 1 });
    expect(zones[0]!.timeMs).toHaveLength(rowCount - 1);
  }
});
