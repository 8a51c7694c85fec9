import { describe, expect, test } from 'vitest';
import { namedZone, readEventPaths, readEventTexts } from '../../make/event-file.js';
import { sharedData } from '../../make/shared-data.js';

const zones = [namedZone(0, 'Zone 1'), namedZone(1, 'Zone 2')];
const at = (clock: string) => Date.parse(`2026-03-04T${clock}Z`);

describe('event rows', () => {
  const head = 'Time;Source;Message;State;Priority';
  test('activation, acknowledgement and return make one alarm', async () => {
    const { alarms, problems } = await readEventTexts(
      {
        'alarms.csv': [
          head,
          '2026-03-04 06:00:00;Zone 1;sensor open circuit;Active;1',
          '2026-03-04 06:00:05;Zone 1;sensor open circuit;Acknowledged;1',
          '2026-03-04 06:00:30;Machine;Guard open;Active;3',
          '2026-03-04 06:01:00;Zone 1;sensor open circuit;Cleared;1',
          '2026-03-04 06:02:00;Zone 2;high;Active;2',
        ].join('\n'),
      },
      zones,
    );
    expect(problems).toEqual([]);
    expect(alarms).toEqual([
      {
        startMs: at('06:00:00'),
        endMs: at('06:01:00'),
        acknowledgedMs: at('06:00:05'),
        source: 'Zone 1',
        message: 'sensor open circuit',
        kind: 'sensor-open',
        zone: 0,
        machine: 'M1',
        priority: '1',
      },
      {
        startMs: at('06:00:30'),
        endMs: NaN,
        acknowledgedMs: NaN,
        source: 'Machine',
        message: 'Guard open',
        kind: 'machine-stop',
        zone: null,
        machine: 'M1',
        priority: '3',
      },
      {
        startMs: at('06:02:00'),
        endMs: NaN,
        acknowledgedMs: NaN,
        source: 'Zone 2',
        message: 'high',
        kind: 'temperature-high',
        zone: 1,
        machine: 'M1',
        priority: '2',
      },
    ]);
  });

  test('files that overlap add nothing; orphans and bad rows are told', async () => {
    const rows = [
      '2026-03-04 06:00:00;Zone 1;high;Active;1',
      '2026-03-04 06:00:05;Zone 1;high;Cleared;1',
      '2026-03-04 06:00:09;Zone 1;high;Active;1',
    ];
    const { alarms, sources, problems } = await readEventTexts(
      {
        'a.csv': [head, '2026-03-04 05:00:00;Zone 2;high;Cleared;1', ...rows].join('\n'),
        'b.csv': [
          head,
          ...rows,
          '2026-03-04 06:00:20;Zone 1;high;Cleared;1',
          'no time at all;Zone 1;high;Active;1',
          '',
        ].join('\n'),
      },
      zones,
    );
    expect(alarms.map(({ startMs, endMs }) => [startMs, endMs])).toEqual([
      [at('06:00:00'), at('06:00:05')],
      [at('06:00:09'), at('06:00:20')],
    ]);
    expect(sources[0]!.notes.join(' ')).toMatch(/said already, left out: 3\..*Returns of alarms [^:]*: 1\./s);
    expect(problems).toMatchObject([{ code: 'bad-row', line: 6, count: 1 }]);
    expect(sources[1]).toMatchObject({ rowsRead: 4, rowsRejected: 1 });
  });

  test('a return with another text ends what stands at its source', async () => {
    const { alarms } = await readEventTexts(
      {
        'a.csv': [
          head,
          '2026-03-04 06:00:00;Zone 1;temperature high;Active;1',
          '2026-03-04 06:03:00;Zone 1;temperature normal;Cleared;1',
        ].join('\n'),
      },
      zones,
    );
    expect(alarms.map(({ endMs }) => endMs)).toEqual([at('06:03:00')]);
  });
});

test('rows that cannot be cut into cells are counted with the rest', async () => {
  const { sources, problems } = await readEventTexts(
    {
      'a.csv': [
        'Time;Source;Message;State',
        '2026-03-04 06:00:00;Zone 1;high;Active',
        '2026-03-04 06:00:01;Zo\0ne 1;high;Cleared',
        '2026-03-04 06:00:02;Zone 1;high;Cleared',
      ].join('\n'),
    },
    zones,
  );
  expect(sources[0]).toMatchObject({ rowsRead: 2, rowsRejected: 1 });
  expect(problems).toHaveLength(1);
});

describe('other shapes', () => {
  test('German come and gone, date and clock apart, code table in plant.yaml', async () => {
    const { alarms } = await readEventTexts(
      {
        'meldungen.csv': [
          'Datum;Uhrzeit;Nr.;Meldetext;Zustand',
          '04.03.2026;06:14:03;4711;Sammelstörung;gekommen',
          '04.03.2026;06:15:10;4711;Sammelstörung;gegangen',
          '13.03.2026;06:15:10;4712;Heizzone 2 Fühlerbruch;gekommen',
        ].join('\r\n'),
      },
      zones,
      { zones: [], alarmTexts: [{ text: '4711', kind: 'heater', zone: 'Zone 1' }] },
    );
    expect(alarms.map(({ kind, zone, startMs }) => [kind, zone, startMs])).toEqual([
      ['heater', 0, at('06:14:03')],
      ['sensor-open', 1, Date.parse('2026-03-13T06:15:10Z')],
    ]);
  });
  test('start and duration; source and message in one cell', async () => {
    const { alarms } = await readEventTexts(
      {
        'alarms.csv':
          'Start,Duration (min),Alarm\n2026-03-04 06:00:00,1.5,Zone 2: PV out of range\n2026-03-04 07:00:00,,Machine: Jam detected\n',
      },
      zones,
    );
    expect(alarms).toMatchObject([
      { endMs: at('06:01:30'), source: 'Zone 2', message: 'PV out of range', kind: 'sensor-fault', zone: 1 },
      { kind: 'machine-stop', zone: null },
    ]);
    expect(alarms[1]!.endMs).toBeNaN();
  });
  test('maintenance list and stop list', async () => {
    const { maintenance, stops } = await readEventTexts(
      {
        'maintenance.csv':
          'When,Zone,What was done,What was found\n2026-03-04 10:00,Zone 2,Replaced RTD,element open\n',
        'stops.csv':
          'Start,End,Machine,Stop reason,Planned\n2026-03-04 11:00,2026-03-04 11:30,M1,Changeover,yes\n2026-03-04 12:00,2026-03-04 12:10,M1,Jam,no\n',
      },
      zones,
    );
    expect(maintenance).toMatchObject([{ zone: 1, cause: 'sensor', isReplacement: true, timeMs: at('10:00:00') }]);
    expect(stops.map(({ reason, isPlanned, endMs }) => [reason, isPlanned, endMs])).toEqual([
      ['Changeover', true, at('11:30:00')],
      ['Jam', false, at('12:10:00')],
    ]);
  });
});

test('a stop whose end is typed in another year is left out and told', async () => {
  const rows = '2026-03-04 11:00,2026-03-04 11:30,M1,Jam,no\n2026-03-04 12:00,2062-03-04 12:10,M1,Jam,no\n';
  const { stops, problems } = await readEventTexts(
    { 'stops.csv': `Start,End,Machine,Stop reason,Planned\n${rows}` },
    zones,
  );
  expect(stops).toHaveLength(1);
  expect(problems).toMatchObject([{ line: 3, count: 1 }]);
  expect(problems[0]!.what).toContain('its end is years from its start');
});

const tep = sharedData('open/tep-alarms/text_alarms_original_1.csv');
test.skipIf(!tep)(
  'Tennessee Eastman alarm list (CC0) is read whole: 7,132 rows, 32 tags, FIR123 chatters',
  async () => {
    const { alarms, sources } = await readEventPaths([tep!], []);
    expect(sources).toMatchObject([{ kind: 'alarm', rowsRead: 7132, rowsRejected: 0 }]);
    // counted in the file itself: 1,004 H + 1 HH + 2,572 L activations
    expect(alarms).toHaveLength(3577);
    expect(new Set(alarms.map(({ source }) => source)).size).toBe(32);
    const ofFir = alarms.filter(({ source }) => source === 'FIR123');
    const returned = ofFir.filter(({ endMs }) => !Number.isNaN(endMs)).length;
    expect(ofFir.length + returned).toBe(6901);
    const { chatterOf } = await import('../../../src/alarms/floods.js');
    const { alarmDefaults } = await import('../../../src/alarms/thresholds.js');
    expect(
      chatterOf(
        ofFir.map(({ startMs }) => startMs),
        alarmDefaults,
      ),
    ).toBeGreaterThan(0);
  },
);

describe('a clock that nobody had set', () => {
  const logMs = { start: at('00:00:00'), end: at('23:59:00') };
  test('rows of events: its rows are left out and counted, so no alarm lasts for 56 years', async () => {
    const rows = [
      'Time;Source;Message;State',
      '1970-01-01 00:00:20;Zone 1;sensor open circuit;Active',
      '2026-03-04 06:00:00;Zone 1;sensor open circuit;Cleared',
      '2026-03-04 07:00:00;Zone 2;high;Active',
      '2026-03-05 07:00:00;Zone 2;low;Active',
    ];
    const { alarms, sources, problems } = await readEventTexts({ 'a.csv': rows.join('\n') }, zones, undefined, {
      logMs,
    });
    expect(alarms.map(({ startMs, message }) => [startMs, message])).toEqual([
      [at('07:00:00'), 'high'],
      [at('07:00:00') + 86_400_000, 'low'],
    ]);
    expect(sources[0]).toMatchObject({ rowsRead: 3, rowsRejected: 1 });
    expect(problems.map(({ what }) => what).join()).toMatch(/One row was left out: the clock had not been set.*line 2/);
    const notes = sources[0]!.notes.join(' ');
    expect(notes).toMatch(/Returns of alarms whose activation the log does not hold: 1\./);
    expect(notes).toMatch(/Alarms that still stood at the end of the list, [^:]*: 2\./);
    expect(notes).toMatch(/Alarms before or after the temperature log, which do not count: 1\./);
  });
  test('rows of whole alarms: an end or acknowledgement in 1970 or 1900 is none', async () => {
    const rows = [
      'Start;End;Acknowledged;Source;Message',
      '1970-01-01 00:00:20;2026-03-04 06:00:00;;Zone 1;high',
      '2026-03-04 06:00:00;1970-01-01 00:00:00;1970-01-01 00:00:00;Zone 1;low',
      '2026-03-04 07:00:00;1900-01-01 00:00:00;2026-03-04 07:01:00;Zone 2;low',
    ];
    const { alarms } = await readEventTexts({ 'a.csv': rows.join('\n') }, zones, undefined, { logMs });
    expect(alarms.map(({ startMs, endMs, acknowledgedMs }) => [startMs, endMs, acknowledgedMs])).toEqual([
      [at('06:00:00'), NaN, NaN],
      [at('07:00:00'), NaN, at('07:01:00')],
    ]);
  });
  test('a list that knows no other times keeps them', async () => {
    const rows = ['Time;Source;Message;State', '1970-01-01 00:00:20;Zone 1;high;Active'];
    const log = { start: Date.UTC(1970, 0, 1), end: Date.UTC(1970, 0, 2) };
    const { alarms } = await readEventTexts({ 'a.csv': rows.join('\n') }, zones, undefined, { logMs: log });
    expect(alarms).toHaveLength(1);
  });
});

describe('what people did is no alarm', () => {
  test.each([
    'Operator login: B. Example',
    'User logged off',
    'Recipe changed to 12',
    'Recipe loaded: lid foil',
    'Rezept geladen',
    'Benutzer abgemeldet',
    'Changement de recette',
    'Cambio de turno',
    '配方切换',
  ])('%s', async (text) => {
    const rows = ['Time;Source;Message;State', `2026-03-04 06:00:00;Panel;${text};Active`];
    const { alarms, sources } = await readEventTexts({ 'a.csv': rows.join('\n') }, zones);
    expect(alarms).toHaveLength(0);
    expect(sources[0]!.notes.join()).toMatch(/what somebody did.*: 1\./);
  });

  test.each([
    ['Recipe download failed', 'other'],
    ['Guard door open', 'machine-stop'],
    ['E-stop pressed', 'machine-stop'],
    ['Zone 1 sensor break after product change', 'sensor-open'],
  ])('%s stays an alarm', async (text, kind) => {
    const rows = ['Time;Source;Message;State', `2026-03-04 06:00:00;Panel;${text};Active`];
    const { alarms } = await readEventTexts({ 'a.csv': rows.join('\n') }, zones);
    expect(alarms.map((it) => it.kind)).toEqual([kind]);
  });
});
