import { expect, test } from 'vitest';
import { namedZone, readEventTexts } from '../../make/event-file.js';

const zones = [namedZone(0, 'Zone 1'), namedZone(1, 'Zone 2')];
const minutes = (startMs: number, endMs: number | null): [string, number | null] => [
  new Date(startMs).toISOString().slice(0, 16),
  endMs === null ? null : (endMs - startMs) / 60_000,
];

test('in a list of alarms a date holds for the rows below that have none, and this is noted', async () => {
  const text = `Datum;Uhrzeit;Zone;Meldung;Status
02.03.2026;06:10:00;Zone 1;Fühlerbruch;gekommen
;06:12:00;Zone 1;Fühlerbruch;gegangen
;09:00:00;Zone 2;Untertemperatur;gekommen
;09:20:00;Zone 2;Untertemperatur;gegangen
13.03.2026;07:00:00;Zone 1;Fühlerbruch;gekommen
;07:04:00;Zone 1;Fühlerbruch;gegangen
`;
  const { alarms, sources } = await readEventTexts({ 'alarms.csv': text }, zones);
  expect(alarms.map(({ startMs, endMs }) => minutes(startMs, endMs))).toEqual([
    ['2026-03-02T06:10', 2],
    ['2026-03-02T09:00', 20],
    ['2026-03-13T07:00', 4],
  ]);
  expect(sources[0]!.notes.join()).toContain('taken with that of the row above: 4 rows');
});

test('in a list of stops it holds for both clocks, also past midnight; a row without a clock stays out', async () => {
  const text = `Date;From;To;Reason
2026-03-02;09:02;09:30;Zone 2 cold
;23:50;00:20;Format change
;;;cleaned
2026-03-03;07:00;07:30;Zone 1
`;
  const { stops, sources } = await readEventTexts({ 'stops.csv': text }, zones);
  expect(stops.map(({ startMs, endMs }) => minutes(startMs, endMs))).toEqual([
    ['2026-03-02T09:02', 28],
    ['2026-03-02T23:50', 30],
    ['2026-03-03T07:00', 30],
  ]);
  expect(sources[0]).toMatchObject({ rowsRead: 3, rowsRejected: 1 });
});

test('a clock without a date above stays out', async () => {
  const text = `Date;Time;Zone;Alarm;State
;06:10:00;Zone 1;Sensor break;Active
2026-03-02;06:12:00;Zone 1;Sensor break;Active
2026-03-02;06:14:00;Zone 1;Sensor break;Cleared
`;
  const { alarms, sources } = await readEventTexts({ 'alarms.csv': text }, zones);
  expect(alarms.map(({ startMs, endMs }) => minutes(startMs, endMs))).toEqual([['2026-03-02T06:12', 2]]);
  expect(sources[0]).toMatchObject({ rowsRead: 2, rowsRejected: 1 });
});
