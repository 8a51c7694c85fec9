import { expect, test } from 'vitest';
import { namedZone, readEventTexts } from '../../make/event-file.js';

const zones = [namedZone(0, 'Zone 1'), namedZone(1, 'Zone 2')];
const at = (clock: string) => Date.parse(`2026-09-06T${clock}Z`);
const open = { startMs: at('06:00:00'), endMs: at('06:01:00'), kind: 'sensor-open', zone: 0 };
const logMs = { start: at('05:00:00'), end: at('20:00:00') };

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
