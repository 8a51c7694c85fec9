import { describe, expect, test } from 'vitest';
import { namedZone, readEventTexts } from '../../make/event-file.js';

const zones = [1, 2, 3, 4].map((number, index) => namedZone(index, `Zone ${number}`));
const time = (ms: number): string => new Date(ms).toISOString().slice(0, 16);

/** Begin, minutes, and whether it was planned. */
async function stopsOf(text: string, name = 'stops.csv') {
  const { stops, sources, problems } = await readEventTexts({ [name]: text }, zones);
  return {
    sources,
    problems,
    stops: stops.map(({ startMs, endMs, isPlanned }) => [
      time(startMs),
      Math.round((endMs - startMs) / 60_000),
      isPlanned ? 'planned' : 'not planned',
    ]),
  };
}

describe('how long a stop took, as people write it (common practice)', () => {
  test.each([
    ['Duration', ['20 min', "30'", '1h15']],
    ['Duration', ['0:20', '0:30', '1:15']],
    ['Duration', ['20:00', '30:00', '75:00']],
    ['Duration (min)', ['20:00', '30:00', '75:00']],
    ['Durata (ore)', ['0,3333', '0,5', '1,25']],
    ['Minuten', ['20', '30', '75']],
    ['Minutos', ['20', '30', '75']],
  ])('%s: %j', async (name, [first, second, third]) => {
    const rows = [
      `2026-03-02;06:30;${first};Zone 1 cold`,
      `2026-03-02;12:00;${second};Lunch`,
      `2026-03-03;07:15;${third};Zone 2`,
    ];
    const { stops } = await stopsOf(`Date;Start;${name};Reason\n${rows.join('\n')}\n`);
    expect(stops).toEqual([
      ['2026-03-02T06:30', 20, 'not planned'],
      ['2026-03-02T12:00', 30, 'planned'],
      ['2026-03-03T07:15', 75, 'not planned'],
    ]);
  });
});

test('a stop of which only day and length are known is left out and counted: nobody knows when it was', async () => {
  const text = 'Date,Shift,Minutes,Reason\n2026-03-02,early,20,Zone 1 cold\n2026-03-03,N,25,Zone 2\n';
  const { stops, sources } = await stopsOf(text);
  expect(stops).toEqual([]);
  expect(sources[0]).toMatchObject({ rowsRead: 0, rejectedByReason: { 'a day without a time': 2 } });
});

test('a stop without an end does not reach to midnight', async () => {
  const text = 'Date,Start,End,Reason\n2026-03-02,06:30,06:50,Zone 1 cold\n2026-03-04,08:00,,Zone 3 cold\n';
  const { stops, problems } = await stopsOf(text);
  expect(stops).toEqual([['2026-03-02T06:30', 20, 'not planned']]);
  expect(problems.map(({ what }) => what).join()).toContain('One stop has no end');
});

test.each([
  ['przestoje.csv', 'Data;Od;Do;Przyczyna', 'Strefa 1 zimna', 'Przerwa'],
  ['stopplogg.csv', 'Dato;Fra;Til;Årsak', 'Sone 1 kald', 'Pause'],
  ['paradas.csv', 'Data;De;Até;Motivo', 'Zona 1 fria', 'Almoço'],
  ['fermate.csv', 'Data;Dalle;Alle;Motivo', 'Zona 1 fredda', 'Pausa pranzo'],
  ['stilstand.csv', 'Datum;Van;Tot;Reden', 'Zone 1 koud', 'Schoonmaak'],
])('%s: %s (words from memory)', async (name, header, cold, pause) => {
  const rows = [`02.03.2026;06:30;06:50;${cold}`, `02.03.2026;12:00;12:30;${pause}`, `13.03.2026;23:50;00:20;${cold}`];
  const { stops } = await stopsOf(`${header}\n${rows.join('\n')}\n`, name);
  expect(stops).toEqual([
    ['2026-03-02T06:30', 20, 'not planned'],
    ['2026-03-02T12:00', 30, 'planned'],
    ['2026-03-13T23:50', 30, 'not planned'],
  ]);
});

/** 06:30 to 06:50 and 12:00 to 12:30 on 2 March 2026, 07:15 to 07:40 on the 13th. */
const threeStops = [
  ['2026-03-02T06:30', 20, 'not planned'],
  ['2026-03-02T12:00', 30, 'planned'],
  ['2026-03-13T07:15', 25, 'not planned'],
];
const marchMs = { start: Date.UTC(2026, 2, 1), end: Date.UTC(2026, 2, 15) };

describe('lists of stops as people keep them: what stands in the file is what they mean', () => {
  test.each<readonly [string, string]>([
    [
      'titles above, sums below',
      'Werk Blechtal - Linie 3;;;;\nStillstände KW 10/2026;;;;\n;;;;\nDatum;von;bis;Dauer (min);Grund\n02.03.2026;06:30;06:50;20;Zone 1 kalt\n02.03.2026;12:00;12:30;30;Pause\n;;Summe;50;\n13.03.2026;07:15;07:40;25;Zone 2\n;;Summe;25;\n',
    ],
    [
      'clocks with dots',
      'Datum;Beginn;Ende;Grund\n2.3.2026;6.30;6.50;Zone 1 kalt\n2.3.2026;12.00;12.30;Pause\n13.3.2026;7.15;7.40;Zone 2\n',
    ],
    [
      'numbers for clocks, as a spreadsheet leaves them',
      'Datum;Beginn;Ende;Grund\n2.3.2026;6,3;6,5;Zone 1 kalt\n2.3.2026;12;12,3;Pause\n13.3.2026;7,15;7,4;Zone 2\n',
    ],
    [
      'clocks of four digits',
      'Date,Start,End,Reason\n2 Mar 2026,0630,0650,Zone 1 cold\n2 Mar 2026,1200,1230,Lunch\n13 Mar 2026,715,740,Zone 2\n',
    ],
    [
      'hours with an h',
      'Date;Début;Fin;Motif\n02/03/2026;6h30;6h50;Zone 1 froide\n02/03/2026;12h;12h30;Nettoyage\n13/03/2026;7h15;7h40;Zone 2\n',
    ],
    [
      'begin and end in one cell',
      'Date,Time,Reason\n2026-03-02,06:30-06:50,Zone 1 cold\n2026-03-02,12h - 12h30,Lunch\n2026-03-13,from 7:15 to 7:40,Zone 2\n',
    ],
    [
      'begin and length in one cell',
      'Date,When,Reason\n2/3/2026,from 6:30 for 20 min,Zone 1 cold\n2/3/2026,12:00 (30 min),Lunch\n13/3/2026,7:15 + 25 min,Zone 2\n',
    ],
    [
      'no year, days of the week',
      'Date,From,To,Reason\nMon 2/3,06:30,06:50,Zone 1 cold\nMon 2/3,12:00,12:30,Lunch\nFri 13/3,07:15,07:40,Zone 2\n',
    ],
    [
      'no year, dots',
      'Datum;von;bis;Grund\n2.3.;06:30;06:50;Zone 1 kalt\n2.3.;12:00;12:30;Pause\n13.3.;07:15;07:40;Zone 2\n',
    ],
    [
      'no year, names of months',
      'Jour;De;À;Motif\n2 mars;06:30;06:50;Zone 1 froide\n2 mars;12:00;12:30;Nettoyage\n13 mars;07:15;07:40;Zone 2\n',
    ],
    [
      'an apostrophe, about, and an error of a formula',
      "Date,From,To,Minutes,Reason\n2026-03-02,ca. 06:30,06:50,'20,Zone 1 cold\n2026-03-02,12:00,~12:30,#REF!,Lunch\n2026-03-13,'07:15,'07:40,25,Zone 2\n",
    ],
    [
      'days in lines of their own',
      'From,To,Reason\nMonday 2 March 2026,,\n06:30,06:50,Zone 1 cold\n12:00,12:30,Lunch\nFriday 13 March 2026,,\n07:15,07:40,Zone 2\n',
    ],
    [
      'week and day (ISO 8601: 2 March 2026 is Monday of week 10)',
      'KW;Wochentag;von;bis;Grund\nKW10;Montag;06:30;06:50;Zone 1 kalt\n;;12:00;12:30;Pause\n11;Fr.;07:15;07:40;Zone 2\n',
    ],
    [
      'columns between the date and its clocks',
      'Date,Shift,From,To,Operator,Reason\n2026-03-02,E,06:30,06:50,Ann,Zone 1 cold\n2026-03-02,E,12:00,12:30,Ann,Lunch\n2026-03-13,L,07:15,07:40,Cy,Zone 2\n',
    ],
    [
      'a sum behind each day',
      'Date,From,To,Min,Reason\n2026-03-02,06:30,06:50,20,Zone 1 cold\n2026-03-02,12:00,12:30,30,Lunch\n2026-03-02,,,50,Total\n2026-03-13,07:15,07:40,25,Zone 2\n2026-03-13,,,25,Total\n',
    ],
    [
      'begin and end in one column that is called so',
      'Tag;von - bis;Grund\n02.03.2026;06:30 - 06:50;Zone 1 kalt\n02.03.2026;12:00 - 12:30;Pause\n13.03.2026;07:15 - 07:40;Zone 2\n',
    ],
    [
      'what happened in place of a reason, in a file that is called so',
      'Start,Min.,What happened\n02.03.2026 6:30,20,Zone 1 cold\n02.03.2026 12:00,30,Lunch\n13.03.2026 7:15,25,Zone 2\n',
    ],
    [
      'no names at all',
      '02.03.2026;06:30;06:50;Zone 1 cold\n02.03.2026;12:00;12:30;Lunch\n13.03.2026;07:15;07:40;Zone 2\n',
    ],
    [
      'kinds of stops in a column of their own',
      'Datum;von;bis;Art;Grund\n02.03.2026;06:30;06:50;Störung;Zone 1 kalt\n02.03.2026;12:00;12:30;Pause;\n13.03.2026;07:15;07:40;Störung;Zone 2\n',
    ],
    [
      'an end without its day',
      'Start,End,Reason\n02.03.2026 06:30,06:50,Zone 1 cold\n02.03.2026 12:00,02.03.2026 12:30,Lunch\n13.03. 07:15,07:40,Zone 2\n',
    ],
    [
      'ditto marks',
      'Date,From,To,Reason\n2026-03-02,06:30,06:50,Zone 1 cold\n"""",12:00,12:30,Lunch\n2026-03-13,07:15,07:40,Zone 2\n',
    ],
  ])('%s', async (_, text) => {
    const { stops } = await readEventTexts({ 'stops.csv': text }, zones, { zones: [] }, { logMs: marchMs });
    expect(
      stops.map(({ startMs, endMs, isPlanned }) => [
        time(startMs),
        Math.round((endMs - startMs) / 60_000),
        isPlanned ? 'planned' : 'not planned',
      ]),
    ).toEqual(threeStops);
  });
});

test('a stop that still stands has no end, and this is told; the others are read', async () => {
  const rows = ['06:30,06:50,Zone 1', '12:00,12:30,Lunch', '14:00,?,Zone 2', '15:00,still down,Zone 2'];
  const text = `Date,From,To,Reason\n${rows.map((row) => `2026-03-02,${row}`).join('\n')}\n`;
  const { stops, problems } = await stopsOf(text);
  expect(stops).toEqual(threeStops.slice(0, 2));
  expect(problems.map(({ what }) => what).join()).toContain('2 stops have no end');
});

test('a year is that in which the day lies nearest to the log, at its turn as well', async () => {
  const text = 'Datum;von;bis;Grund\n31.12.;22:00;22:20;Zone 1 kalt\n1.1.;06:00;06:10;Zone 2 kalt\n';
  const logMs = { start: Date.UTC(2025, 11, 29), end: Date.UTC(2026, 0, 4) };
  const { stops } = await readEventTexts({ 'stops.csv': text }, zones, { zones: [] }, { logMs });
  expect(stops.map(({ startMs }) => time(startMs))).toEqual(['2025-12-31T22:00', '2026-01-01T06:00']);
});

test('what was taken how stands in the notes', async () => {
  const text = 'Datum;von;bis;Grund\n2.3.;6.30;6.50;Zone 1 kalt\n13.3.;7.15;7.40;idem\n';
  const { sources } = await readEventTexts({ 'stops.csv': text }, zones, { zones: [] }, { logMs: marchMs });
  const notes = sources[0]!.notes.join();
  expect(notes).toContain('dates without a year');
  expect(notes).toContain('clocks are taken from numbers in "von", "bis"');
  expect(notes).toContain('hold what stands above them');
});

describe('several tables on one sheet', () => {
  const stopRows = [
    '2026-03-02,06:30,06:50,Zone 1 cold',
    '2026-03-02,12:00,12:30,Lunch',
    '2026-03-13,07:15,07:40,Zone 2',
  ];
  const workRows = ['2026-03-03 07:00,Zone 2,RTD replaced', '2026-03-04 08:00,Zone 3,terminal tightened'];
  const read = async (text: string) => {
    const { stops, maintenance, sources } = await readEventTexts({ 'shift book.csv': text }, zones);
    return {
      sources,
      stops: stops.map(({ startMs, endMs, isPlanned }) => [
        time(startMs),
        Math.round((endMs - startMs) / 60_000),
        isPlanned ? 'planned' : 'not planned',
      ]),
      work: maintenance.map(({ timeMs, zone, cause }) => [time(timeMs), zone, cause]),
    };
  };
  const works = [
    ['2026-03-03T07:00', 1, 'sensor'],
    ['2026-03-04T08:00', 2, 'wiring'],
  ];

  test('one below the other, each of its own kind', async () => {
    const text = `Stops,,,\nDate,From,To,Reason\n${stopRows.join('\n')}\n,,,\nMaintenance,,,\nDate,Zone,Work done,By\n${workRows.join(',AB\n')},CD\n`;
    const { stops, work, sources } = await read(text);
    expect(stops).toEqual(threeStops);
    expect(work).toEqual(works);
    expect(sources.map(({ kind, rowsRead }) => [kind, rowsRead])).toEqual([
      ['stops', 3],
      ['maintenance', 2],
    ]);
  });

  test.each([
    ['a blank column between them', ',', ',,,,'],
    ['nothing between them', '', ',,,'],
  ])('side by side with %s', async (_, gap, none) => {
    const rows = stopRows.map((row, i) => (workRows[i] ? `${row},${gap}${workRows[i]}` : `${row}${none}`));
    const { stops, work } = await read(`Date,From,To,Reason,${gap}Date,Zone,Work done\n${rows.join('\n')}\n`);
    expect(stops).toEqual(threeStops);
    expect(work).toEqual(works);
  });

  test('names that come again with each page are no rows, and none is lost before them', async () => {
    const [first, second, third] = stopRows;
    const names = 'Date,From,To,Reason';
    const { stops, sources } = await read(`Page 1\n${names}\n${first}\n\nPage 2\n${names}\n${second}\n${third}\n`);
    expect(stops).toEqual(threeStops);
    expect(sources.map(({ rowsRead }) => rowsRead)).toEqual([3]);
  });
});

test.each([
  ['Date,Zone 1,Zone 2,Zone 3,Remark', 'in the words of a remark'],
  ['Date,Z1,Z2,Z3,Work done', 'as work done'],
])('crosses below the zones that were worked on, %s', async (header) => {
  const text = `${header}\n2026-03-02,x,,,RTD replaced\n2026-03-03,,x,X,terminals tightened\n2026-03-04,,,x,RTD replaced\n`;
  const { maintenance } = await readEventTexts({ 'zones.csv': text }, zones);
  expect(maintenance.map(({ timeMs, zone, cause }) => [time(timeMs).slice(0, 10), zone, cause])).toEqual([
    ['2026-03-02', 0, 'sensor'],
    ['2026-03-03', 1, 'wiring'],
    ['2026-03-03', 2, 'wiring'],
    ['2026-03-04', 2, 'sensor'],
  ]);
});

test('alarms of which only the day is known are not held against the temperatures, and this is told', async () => {
  const text = 'Date,Zone,Alarm\n2026-03-02,1,sensor break\n2026-03-03,2,temperature low\n';
  const { alarms, problems } = await readEventTexts({ 'alarms.csv': text }, zones);
  expect(alarms).toEqual([]);
  expect(problems[0]!.what).toContain('no time of day');
});

test('a comment beside the reason makes a stop no alarm', async () => {
  const text =
    'Date,From,To,Reason,Comment\n2026-03-02,06:30,06:50,Zone 1 cold,"called Jim;\nwaited"\n2026-03-02,12:00,12:30,Lunch,\n2026-03-13,07:15,07:40,Zone 2,ok\n';
  expect((await stopsOf(text)).stops).toEqual(threeStops);
});

test('work that names no zone of the logs is counted', async () => {
  const text = 'Date,Zone,Work done\n2026-03-02,Z1+Z3,RTD replaced\n2026-03-03,9,RTD replaced\n';
  const { maintenance, sources } = await readEventTexts({ 'work.csv': text }, zones);
  expect(maintenance.map(({ zone }) => zone)).toEqual([0, 2, null]);
  expect(sources[0]!.notes.join()).toContain('names no zone of the temperature logs and counts for none: 1');
});

test.each([
  ['the date blank below', 'Date,From,To,Reason', '2026-03-02,', '2026-03-03,', ','],
  ['the day in a line above', 'From,To,Reason', 'Mon 2 March 2026,,\n', 'Tue 3 March 2026,,\n', ''],
])('a night is written under the day it begins: %s', async (_, header, first, second, blank) => {
  const rows = [
    `${first}22:30,22:50,Zone 1 cold`,
    `${blank}23:50,00:20,Zone 1 cold`,
    `${blank}01:15,01:40,Zone 2 cold`,
    `${second}22:10,22:20,Zone 2 cold`,
    `${blank}02:15,02:40,Zone 2 cold`,
  ];
  const { stops, sources } = await stopsOf(`${header}\n${rows.join('\n')}\n`);
  expect(stops.map(([start, minutes]) => [start, minutes])).toEqual([
    ['2026-03-02T22:30', 20],
    ['2026-03-02T23:50', 30],
    ['2026-03-03T01:15', 25],
    ['2026-03-03T22:10', 10],
    ['2026-03-04T02:15', 25],
  ]);
  expect(sources[0]!.notes.join()).toContain('behind midnight, since the clock goes back: 2 rows');
});

test('the newest row first passes no midnight', async () => {
  const rows = ['2026-03-13,22:00,22:20', ',02:00,02:30', '2026-03-02,22:00,22:20', ',01:00,01:05'];
  const { stops } = await stopsOf(`Date,From,To,Reason\n${rows.map((row) => `${row},Zone 1 cold`).join('\n')}\n`);
  expect(stops.map(([start]) => start)).toEqual([
    '2026-03-02T01:00',
    '2026-03-02T22:00',
    '2026-03-13T02:00',
    '2026-03-13T22:00',
  ]);
});

test('alarms whose clocks stand apart from their date', async () => {
  const text =
    'Date,Zone,Alarm,Came,Gone\n2/3/2026,1,sensor break,06:30,06:50\n13/3/2026,2,sensor break,23:50,00:10\n13/3/2026,2,sensor break,,\n';
  const { alarms, sources } = await readEventTexts({ 'alarm notes.csv': text }, zones);
  expect(alarms.map(({ startMs, endMs, zone }) => [time(startMs), (endMs - startMs) / 60_000, zone])).toEqual([
    ['2026-03-02T06:30', 20, 0],
    ['2026-03-13T23:50', 20, 1],
  ]);
  expect(sources[0]!.rejectedByReason).toEqual({ 'a day without a time': 1 });
});

test('work was done on the day that says so, not on that of its order', async () => {
  const text =
    'Order,Order date,Zone,Work done,Date done\n1,2026-02-27,3,RTD replaced,2026-03-02\n2,2026-03-01,2,terminal tightened,2026-03-04\n';
  const { maintenance } = await readEventTexts({ 'work.csv': text }, zones);
  expect(maintenance.map(({ timeMs, zone }) => [time(timeMs).slice(0, 10), zone])).toEqual([
    ['2026-03-02', 2],
    ['2026-03-04', 1],
  ]);
});

test('a list of stops that says what was done is of stops and of work', async () => {
  const text =
    'Tag;Zeit von;Zeit bis;Dauer;Ursache;Maßnahme\n02.03.2026;06:30;06:50;20 min;Zone 1 kalt;\n02.03.2026;12:00;12:30;30 min;Pause;\n13.03.2026;07:15;07:40;25 min;Zone 2;Fühler getauscht\n';
  const { stops, maintenance } = await readEventTexts({ 'Stillstände KW10.csv': text }, zones);
  expect(stops.map(({ startMs, endMs }) => [time(startMs), (endMs - startMs) / 60_000])).toEqual(
    threeStops.map(([start, minutes]) => [start, minutes]),
  );
  expect(maintenance.map(({ timeMs, zone, cause }) => [time(timeMs), zone, cause])).toEqual([
    ['2026-03-13T07:15', 1, 'sensor'],
  ]);
});

test('two columns, when and what, in a file that is called maintenance', async () => {
  const text =
    'Wann;Was\n2.3. 7:00;Fühler Z3 getauscht\n3.3. 8:15;Klemme Z2 nachgezogen\n13.3. 9:30;Heizpatrone Z4 neu\n';
  const { maintenance } = await readEventTexts({ 'Wartung.csv': text }, zones, { zones: [] }, { logMs: marchMs });
  expect(maintenance.map(({ timeMs, zone, cause }) => [time(timeMs), zone, cause])).toEqual([
    ['2026-03-02T07:00', 2, 'sensor'],
    ['2026-03-03T08:15', 1, 'wiring'],
    ['2026-03-13T09:30', 3, 'heater'],
  ]);
});
