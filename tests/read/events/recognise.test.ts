import { describe, expect, test } from 'vitest';
import { eventState } from '../../../src/read/events/state-words.js';
import { recogniseEvents } from '../../../src/read/events/recognise.js';

const table = (...lines: string[]) => {
  const [header = [], ...rows] = lines.map((line) => line.split('|'));
  return [header, rows] as const;
};

describe('alarm logs', () => {
  test('a row per alarm with start and end', () => {
    const [header, rows] = table(
      'Start|End|Alarm',
      '2026-07-20 06:06:36|2026-07-20 06:19:49|Machine: Jam detected',
      '2026-07-20 06:36:57||Zone 1: sensor open circuit',
    );
    expect(recogniseEvents(header, rows)).toMatchObject({
      kind: 'alarm',
      columns: { start: [0], end: [1], message: 2 },
    });
  });

  test('event rows with state and priority, epoch times', () => {
    const [header, rows] = table(
      'Time|Source|Message|State|Priority',
      '1786950766000|M1|Material end|Active|3',
      '1786950818000|M1|Material end|Acknowledged|3',
    );
    expect(recogniseEvents(header, rows)?.columns).toEqual({
      start: [0],
      source: 1,
      message: 2,
      state: 3,
      priority: 4,
    });
  });

  test('an index column without a name, limit letters as state', () => {
    const [header, rows] = table(
      '|timestamp|tag|type|description',
      '0|2024-05-01 00:00:20.000000000|FIR123|L|FLW COND CW LOW ALM',
      '1|2024-05-01 00:00:30.000000000|FIR123|L NR|FLW COND CW LOW ALM RECOVERED',
    );
    expect(recogniseEvents(header, rows)?.columns).toEqual({ start: [1], source: 2, state: 3, message: 4 });
  });

  test('German headers, date and clock apart, come and gone', () => {
    const [header, rows] = table(
      'Datum|Uhrzeit|Nr.|Meldetext|Zustand|Klasse',
      '04.03.2026|06:14:03|4711|Heizzone 3 Fühlerbruch|gekommen|A',
      '04.03.2026|06:15:10|4711|Heizzone 3 Fühlerbruch|gegangen|A',
    );
    expect(recogniseEvents(header, rows)?.columns).toEqual({
      start: [0, 1],
      code: 2,
      message: 3,
      state: 4,
      priority: 5,
    });
  });

  test('start and duration', () => {
    const [header, rows] = table('Alarm time|Duration (s)|Alarm text', '2026-07-20 06:06:36|93|Zone 1 high');
    expect(recogniseEvents(header, rows)?.columns).toEqual({ start: [0], duration: 1, message: 2 });
  });

  test('no header: told by content', () => {
    const rows = [
      ['2026-07-20 06:06:36', 'Zone 1', 'sensor open circuit', 'Active'],
      ['2026-07-20 06:08:36', 'Zone 2', 'guard open', 'Cleared'],
      ['2026-07-20 06:09:36', 'Zone 2', 'jam', 'Active'],
    ];
    expect(recogniseEvents([], rows)).toMatchObject({ kind: 'alarm', columns: { start: [0], state: 3 } });
  });
});

describe('maintenance and stop lists', () => {
  test('maintenance list in English, Norwegian and German', () => {
    const lists = [
      table('When|Zone|What was done|What was found', '2026-03-04 10:00|Zone 3|Replaced RTD|Element open'),
      table('Dato|Sone|Tiltak|Funn', '04.03.2026|Sone 3|Byttet føler|Brudd i føler'),
      table('Datum|Heizzone|Durchgeführte Arbeit|Befund', '04.03.2026|3|Fühler getauscht|Fühlerbruch'),
    ];
    for (const [header, rows] of lists) {
      expect(recogniseEvents(header, rows)).toMatchObject({
        kind: 'maintenance',
        columns: { start: [0], zone: 1, done: 2, found: 3 },
      });
    }
  });

  test.each([
    ['Dato|Sone|Utført|Funnet', 'føler byttet|føler defekt'],
    ['Datum|Zone|Erledigt|Festgestellt', 'Fühler getauscht|Fühler defekt'],
    ['Date|Zone|Travail effectué|Constaté', 'sonde remplacée|sonde cassée'],
    ['Fecha|Zona|Trabajo realizado|Encontrado', 'sensor reemplazado|sensor roto'],
    ['Data|Zona|Lavoro eseguito|Trovato', 'sonda sostituita|sonda rotta'],
    ['Datum|Zone|Uitgevoerd|Gevonden', 'voeler vervangen|voeler defect'],
    ['Dato|Zone|Udført|Fundet', 'føler udskiftet|føler defekt'],
  ])('what was found stands in a column named by the verb: %s', (head, cells) => {
    const [header, rows] = table(head, `04.03.2026|Zone 3|${cells}`);
    expect(recogniseEvents(header, rows)).toMatchObject({
      kind: 'maintenance',
      columns: { start: [0], zone: 1, done: 2, found: 3 },
    });
  });

  test('stop list', () => {
    const [header, rows] = table(
      'Start|End|Machine|Stop reason|Planned',
      '2026-03-04 10:00|2026-03-04 10:20|M1|Changeover|yes',
    );
    expect(recogniseEvents(header, rows)).toMatchObject({
      kind: 'stops',
      columns: { start: [0], end: [1], machine: 2, reason: 3, planned: 4 },
    });
  });
});

describe('temperature logs are none of them', () => {
  test.each([
    ['long', table('time|tag|value', '1784160000000|Zone 1 temp [degC]|22', '1784160000000|Zone 2 temp [degC]|23')],
    [
      'long with quality',
      table(
        'time|tag|value|quality',
        '2026-03-02T00:00:00.000Z|Barrel feed Actual (°C)|22|Good',
        '2026-03-02T00:00:00.000Z|Barrel mid|23|OK',
      ),
    ],
    [
      'wide with a state column',
      table(
        'Date/Time|A_ACT|A_SET|A_PWR|B_ACT|B_SET|B_PWR|State',
        '2026-06-16 00:00:00|22|0|0|23|0|0|STOP',
        '2026-06-16 00:00:10|23|1|5|24|1|6|RUN',
        '2026-06-16 00:00:20|24|2|7|25|2|8|RUN',
      ),
    ],
    [
      'an on/off column',
      table('Time|Zone 1|Zone 2|State', '2026-06-16 00:00:00|22.1|23.4|ON', '2026-06-16 00:00:10|22.1|23.5|OFF'),
    ],
    [
      'a remark column',
      table(
        'Time|T1|T2|Event',
        '2026-06-16 00:00:00|22.1|23.4|door open',
        '2026-06-16 00:00:10|22.2|23.5|door shut',
        '2026-06-16 00:00:20|22.3|23.6|door open',
      ),
    ],
    ['text readings', table('Time|Zone 1|Zone 2', '2026-06-16 00:00:00|22.1|OPEN', '2026-06-16 00:00:10|22.1|OPEN')],
  ])('%s', (_name, [header, rows]) => {
    expect(recogniseEvents(header, rows)).toBeNull();
  });

  test('nothing to look at', () => {
    expect(recogniseEvents([], [])).toBeNull();
    expect(recogniseEvents(['Start', 'End', 'Alarm'], [])).toBeNull();
  });
});

test.each(['Resuelta', 'Finalizada', 'Résolu', 'Risolto', 'Rientrato', 'gegangen', 'Disparition'])(
  '"%s" says that an alarm is over',
  (word) => expect(eventState(word)).toBe('cleared'),
);

test('lines of names and numbers without a header are no alarms', () => {
  const rows = Array.from({ length: 20 }, (_, i) => [
    ...['2026-03-02', `06:00:${10 + i}`, 'zone=Z1', `pv=${180 + i}.2`],
    'sp=185',
  ]);
  expect(recogniseEvents([], rows)).toBeNull();
});
