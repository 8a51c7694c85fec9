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
