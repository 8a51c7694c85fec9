import { describe, expect, test } from 'vitest';
import { namedZone, readEventPaths, readEventTexts } from '../../make/event-file.js';
import { inFolder } from '../poured.js';

const zones = [namedZone(0, 'Zone 1'), namedZone(1, 'Zone 2')];
const at = (clock: string) => Date.parse(`2026-09-06T${clock}Z`);
const open = { startMs: at('06:00:00'), endMs: at('06:01:00'), kind: 'sensor-open', zone: 0 };
const logMs = { start: at('05:00:00'), end: at('20:00:00') };

// The notations that time-format.test.ts reads from logs of numbers, in lists.
test.each([
  ['6. 9. 2026 6:00:00', '6. 9. 2026 6:01:00'],
  ['2026. 09. 06. 06:00:00', '2026. 09. 06. 06:01:00'],
  ['2026年9月6日 6:00:00', '2026年9月6日 6:01:00'],
  ['So 06.09.2026 06:00:00', 'So 06.09.2026 06:01:00'],
  ['Sun 09/06/2026 06:00:00', 'Sun 09/06/2026 06:01:00'],
  ['Sun Sep  6 06:00:00 2026', 'Sun Sep  6 06:01:00 2026'],
  ['06.09.2026 06:00:00 Uhr', '06.09.2026 06:01:00 Uhr'],
  ['20260906060000', '20260906060100'],
  ['2026-09-06 06:00:00:000', '2026-09-06 06:01:00:000'],
])('a list with times such as %s', async (came, gone) => {
  const list = `Time;Zone;Alarm;State\n${came};Zone 1;Sensor break;Active\n${gone};Zone 1;Sensor break;Cleared\n`;
  const { alarms, problems } = await readEventTexts({ 'list.csv': list }, zones, undefined, { logMs });
  expect(problems).toEqual([]);
  expect([...alarms]).toMatchObject([open]);
});

test.each<[string, string[]]>([
  [
    'Swedish, an alarm list with a number for the priority',
    [
      'Larmlista linje',
      '',
      'Tid;Larmtext;Status;Prioritet',
      '2026-09-06 06:00:00;Givarbrott zon 1;Till;1',
      '2026-09-06 06:00:06;Givarbrott zon 1;Kvitterat;1',
      '2026-09-06 06:01:00;Givarbrott zon 1;Från;1',
    ],
  ],
  [
    'Czech, a row per alarm',
    [
      'Začátek;Konec;Potvrzeno;Zdroj;Text',
      '06.09.2026 06:00:00;06.09.2026 06:01:00;06.09.2026 06:00:06;Zóna 1;Přerušený snímač',
    ],
  ],
  [
    'active and acknowledged as 1 and 0',
    [
      'EventTime|Source|Condition|Active|Acked|Severity',
      '2026-09-06T06:00:00.000Z|ZONE_1|SENSOR_BREAK|1|0|700',
      '2026-09-06T06:00:06.000Z|ZONE_1|SENSOR_BREAK|1|1|700',
      '2026-09-06T06:01:00.000Z|ZONE_1|SENSOR_BREAK|0|1|700',
    ],
  ],
  [
    'how long it stood beside the row of its end',
    [
      'Time;Zone;Alarm;State;Duration',
      '2026-09-06 06:00:00;Zone 1;Sensor break;ON;',
      '2026-09-06 06:01:00;Zone 1;Sensor break;OFF;00:01:00',
    ],
  ],
  ['one date for both clocks', ['Date;On;Off;Alarm', '2026-09-06;06:00:00;06:01:00;Zone 1 sensor break']],
  [
    'come and gone with a date and a clock each',
    ['Come date;Come time;Gone date;Gone time;Text', '06.09.2026;06:00:00;06.09.2026;06:01:00;Zone 1 sensor break'],
  ],
  [
    'plus and minus',
    ['Time;+/-;Text', '2026-09-06 06:00:00;+;Zone 1 sensor break', '2026-09-06 06:01:00;-;Zone 1 sensor break'],
  ],
  [
    'letters for come, acknowledged and gone',
    [
      'Datum;Uhrzeit;Zust.;Nr;Meldetext',
      '06.09.2026;06:00:00;K;100;Zone 1 Fühlerbruch',
      '06.09.2026;06:00:30;KQ;100;Zone 1 Fühlerbruch',
      '06.09.2026;06:01:00;KG;100;Zone 1 Fühlerbruch',
    ],
  ],
  [
    '1 and 0 as the value of an alarm',
    [
      'timestamp,alarm_id,text,value,priority',
      '2026-09-06 06:00:00,12,Zone 1 sensor break,1,500',
      '2026-09-06 06:01:00,12,Zone 1 sensor break,0,500',
    ],
  ],
  [
    'on and off in capitals behind the text',
    ['Time;Alarm', '2026-09-06 06:00:00;Zone 1 sensor break ON', '2026-09-06 06:01:00;Zone 1 sensor break OFF'],
  ],
  [
    'the month first, as the times of the temperature log show',
    [
      'Time,Alarm,State',
      '9/6/2026 06:00:00,Zone 1 sensor break,Active',
      '9/6/2026 06:01:00,Zone 1 sensor break,Cleared',
    ],
  ],
])('%s', async (_, lines) => {
  const { alarms, problems, files } = await readEventTexts({ 'list.csv': `${lines.join('\n')}\n` }, zones, undefined, {
    logMs,
  });
  expect(files.map(({ kind }) => kind)).toEqual(['alarm']);
  expect(problems).toEqual([]);
  expect(alarms.map(({ startMs, endMs, kind, zone }) => ({ startMs, endMs, kind, zone }))).toEqual([open]);
});

test('Dutch words for come and gone in a list without a header', async () => {
  const lines = Array.from({ length: 6 }, (_, i) => [
    `06-09-2026 0${i}:00:00;KOMT;Zone 1 voeler defect`,
    `06-09-2026 0${i}:01:00;GAAT;Zone 1 voeler defect`,
  ]).flat();
  const { alarms } = await readEventTexts({ 'meldingen.csv': `${lines.join('\n')}\n` }, zones);
  expect(alarms.map(({ startMs, endMs }) => endMs - startMs)).toEqual([60_000, 60_000, 60_000, 60_000, 60_000, 60_000]);
  expect(alarms[0]).toMatchObject({ kind: 'sensor-fault', zone: 0 });
});

const courses = ['06:00', '08:00', '10:00', '12:00'];
/** Rows of alarms that come, are acknowledged after a minute and go after five, each with its state. */
const eventRows = (row: (time: string, state: 0 | 1 | 2) => string): string[] =>
  courses.flatMap((clock) =>
    ([0, 1, 2] as const).map((state) => {
      const ms = at(`${clock}:00`) + [0, 1, 5][state]! * 60_000;
      return row(new Date(ms).toISOString().slice(0, 19), state);
    }),
  );
const numbered = (codes: string) => eventRows((time, state) => `${time};Zone 1;Sensor break;${codes[state]!}`);

describe('states as numbers and flags', () => {
  test.each<[string, string[]]>([
    ['told by their order', ['Time;Source;Message;State', ...numbered('120')]],
    ['told by their order, none of them 0', ['Time;Source;Message;Status', ...numbered('132')]],
    [
      'told by a legend',
      ['States: 0 = normal, 1 = unacknowledged, 2 = acknowledged', 'Time;Source;Message;State', ...numbered('120')],
    ],
    [
      'told by lines above',
      ['1;Came', '2;Gone', '3;Acknowledged', '', 'Time;Source;Message;State', ...numbered('132')],
    ],
    [
      'acknowledged in a column of its own',
      [
        'Time;Source;Message;ALM;ACK',
        ...eventRows((time, state) => `${time};Zone 1;Sensor break;${state === 2 ? 0 : 1};${state > 0 ? 1 : 0}`),
      ],
    ],
    [
      'acknowledged or not in words',
      [
        'Time;Source;Message;State;Ack',
        ...eventRows(
          (time, state) => `${time};Zone 1;Sensor break;${state === 2 ? 'OFF' : 'ON'};${state > 0 ? 'Y' : 'N'}`,
        ),
      ],
    ],
  ])('%s', async (_, lines) => {
    const { alarms, problems } = await readEventTexts({ 'alarms.csv': `${lines.join('\n')}\n` }, zones);
    expect(problems).toEqual([]);
    expect(alarms.map((it) => [it.zone, it.acknowledgedMs - it.startMs, it.endMs - it.startMs])).toEqual(
      courses.map(() => [0, 60_000, 300_000]),
    );
  });

  test('numbers in no order are no states, and their rows are counted', async () => {
    const lines = courses.map((clock, i) => `2026-09-06 ${clock}:00;Zone 1;Sensor break ${i};${[1, 2, 3, 4][i]!}`);
    const { alarms, files, problems } = await readEventTexts(
      { 'alarms.csv': `Time;Source;Message;State\n${lines.join('\n')}\n` },
      zones,
    );
    expect(files[0]!.kind).toBe('alarm');
    expect(alarms).toHaveLength(1);
    expect(problems[0]!.what).toContain('3 rows were left out: state word not known');
  });

  test('a flag on the only row of an alarm says that somebody acknowledged it, not when', async () => {
    const lines = courses.map((clock) => `2026-09-06 ${clock}:00;Zone 1;Sensor break;ON;Y`);
    const { alarms } = await readEventTexts(
      { 'alarms.csv': `Time;Source;Message;State;Ack\n${lines.join('\n')}\n` },
      zones,
    );
    expect(alarms.map(({ acknowledgedMs }) => acknowledgedMs)).toEqual(courses.map(() => NaN));
  });
});

test('a list that only its file calls one of alarms, with the value in the text and no word for come', async () => {
  const lines = courses.flatMap((clock, i) => [
    `2026-09-06 ${clock}:00,Zone 2 high: ${231.4 + i} > 225`,
    `2026-09-06 ${clock}:30,Zone 2 high: ${224.1 - i} > 225 cleared`,
  ]);
  const { alarms } = await readEventTexts({ 'alarms.csv': `Time,Text\n${lines.join('\n')}\n` }, zones);
  expect(alarms.map((it) => [it.kind, it.zone, it.endMs - it.startMs])).toEqual(
    courses.map(() => ['temperature-high', 1, 30_000]),
  );
});

test('a list without returns beside one with them: every row is an alarm', async () => {
  const rows = (source: string, states: readonly string[]) =>
    states.map((state, i) => `2026-09-06 0${6 + i}:00:00;${source};Sensor break;${state}\n`).join('');
  const header = 'Time;Zone;Alarm;State\n';
  const { alarms } = await readEventTexts(
    {
      'comes.csv': header + rows('Zone 1', ['Active', 'Active', 'Active']),
      'goes.csv': header + rows('Zone 2', ['Active', 'Cleared', 'Active']),
    },
    zones,
    undefined,
    { logMs },
  );
  const lengths = (zone: number) =>
    alarms.filter((it) => it.zone === zone).map(({ startMs, endMs }) => endMs - startMs);
  expect(lengths(0)).toEqual([0, 0, 0]);
  expect(lengths(1)).toEqual([3_600_000, NaN]);
});

test.each([
  ['never closed', 'Sensor break'],
  ['closed by the quote of a later row', '"Sensor break"'],
])('a quote that is opened by mistake costs its own row only: %s', async (_, message) => {
  const list = [
    'Time,Zone,Alarm,State',
    '2026-09-06 05:59:00,Zone 2,"Sensor break,Active',
    `2026-09-06 06:00:00,Zone 1,${message},Active`,
    `2026-09-06 06:01:00,Zone 1,${message},Cleared`,
  ];
  const { alarms, sources } = await readEventTexts({ 'list.csv': `${list.join('\n')}\n` }, zones, undefined, { logMs });
  expect(alarms).toMatchObject([open]);
  expect(sources[0]).toMatchObject({ rowsRead: 2, rowsRejected: 1 });
});

test('a message of several lines stays one', async () => {
  const list = [
    'Time,Zone,Alarm,State',
    '2026-09-06 06:00:00,Zone 1,"Sensor break',
    'seen at 3, 4 and 5",Active',
    '2026-09-06 06:01:00,Zone 1,"Sensor break',
    'seen at 3, 4 and 5",Cleared',
  ];
  const { alarms } = await readEventTexts({ 'list.csv': `${list.join('\n')}\n` }, zones, undefined, { logMs });
  expect(alarms).toMatchObject([open]);
});

test('rows in Windows-1252 far behind rows that are plain letters only', async () => {
  const low = (i: number) =>
    `${new Date(at('05:00:00') + i * 1000).toISOString()};Zone 2;Low;${i % 2 ? 'Cleared' : 'Active'}`;
  const plain = Array.from({ length: 3000 }, (_, i) => low(i)); // longer than what the encoding is told from
  const late = ['06:00:00Z;Zone 1;Fühlerbruch;Active', '06:01:00Z;Zone 1;Fühlerbruch;Cleared'];
  const text = ['Time;Zone;Alarm;State', ...plain, ...late.map((row) => `2026-09-06T${row}`)].join('\n');
  await inFolder({ 'list.csv': Buffer.from(`${text}\n`, 'latin1') }, async (folder) => {
    const { alarms } = await readEventPaths([folder], zones, undefined, { logMs });
    expect(alarms.filter(({ zone }) => zone === 0)).toMatchObject([open]);
  });
});

test('one date for both clocks of a stop that passes midnight', async () => {
  const list = 'Date;From;To;Stop reason\n2026-09-05;06:10;06:15;Jam\n2026-09-06;23:50;00:10;Jam\n';
  const { stops, problems } = await readEventTexts({ 'stops.csv': list }, zones);
  expect(problems).toEqual([]);
  expect(stops.map(({ startMs, endMs }) => (endMs - startMs) / 60_000)).toEqual([5, 20]);
});

test('numbers of orders make no readings of a list of work', async () => {
  const list = [
    'WO;Date;Machine;Zone;Work done;Technician',
    '1001;2026-09-06;Sealer 1;Zone 2;Heater band replaced;AA',
    '1002;2026-09-06;Sealer 1;Zone 1;Sensor replaced;AA',
  ];
  const { maintenance, files } = await readEventTexts({ 'work.csv': `${list.join('\n')}\n` }, zones);
  expect(files.map(({ kind }) => kind)).toEqual(['maintenance']);
  expect(maintenance.map(({ zone, cause }) => [zone, cause])).toEqual([
    [1, 'heater'],
    [0, 'sensor'],
  ]);
});

test('OFF is a part of the text where the state stands apart', async () => {
  const list =
    'Time;Zone;Alarm;State\n2026-09-06 06:00:00;Zone 1;Heater OFF;Active\n2026-09-06 06:01:00;Zone 1;Heater OFF;Cleared\n';
  const { alarms } = await readEventTexts({ 'list.csv': list }, zones);
  expect(alarms).toMatchObject([{ startMs: open.startMs, endMs: open.endMs, message: 'Heater OFF' }]);
});
