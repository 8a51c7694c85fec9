import { expect, test } from 'vitest';
import { pourFiles } from './poured.js';
import { survey } from '../../src/read/survey/survey.js';
import { inFolder } from './poured.js';

const kindOfText = (text: string): Promise<string> =>
  inFolder({ 'export.csv': text }, async (folder) => (await survey([folder])).files[0]!.kind);
const clock = (i: number): string => new Date(Date.UTC(2026, 2, 2) + i * 10_000).toISOString().slice(11, 19);

test('a cold log with a quality beside every reading is a temperature log', async () => {
  const header =
    'Time,Left Actual (°C),Left Actual (°C) Quality,Left Setpoint (°C),Right Actual (°C),Right Actual (°C) Quality';
  const rows = Array.from({ length: 300 }, (_, i) => `2026-03-02 ${clock(i)},23,OK,0,23,OK`);
  expect(await kindOfText([header, ...rows, ''].join('\n'))).toBe('temperature');
});

test('a list of alarms with compact times, states of 1 and 0 and a priority is an alarm log', async () => {
  const rows = Array.from({ length: 60 }, (_, i) => {
    const time = `20260302T${clock(40 * i).replaceAll(':', '')}`;
    return `${time}\tlow deviation - EX1 Zone ${1 + (i % 4)}\t${(i + 1) % 2}\t${2 + (i % 2)}`;
  });
  expect(await kindOfText(['Start\tAlarm\tState\tPriority', ...rows, ''].join('\n'))).toBe('alarm');
});

test('a list of alarms with durations is none of readings, though its tags are called as thermocouples are', async () => {
  const rows = Array.from({ length: 60 }, (_, i) => {
    const tag = i % 5 === 0 ? 'Line' : `TC-${11 + (i % 4)}`;
    return `${1_781_015_810_625 + i * 3_600_125},${100 + 7 * i},${tag},${i % 5 === 0 ? 'Guard open' : 'temperature low'}`;
  });
  expect(await kindOfText(['Timestamp,Duration (s),Tag,Description', ...rows, ''].join('\n'))).toBe('alarm');
});

test('a list of alarms whose column "Event" says 1 and 0 is no log of numbers', async () => {
  const rows = Array.from(
    { length: 60 },
    (_, i) => `02.03.2026 ${clock(40 * i)};Guard open - Press ${1 + (i % 3)};${(i + 1) % 2}`,
  );
  expect(await kindOfText(['Timestamp;Description;Event', ...rows, ''].join('\n'))).toBe('alarm');
});

test('a log of values and the state of its machine, below a title, is no list of events', async () => {
  const header = [
    'DateTime',
    ...['Front', 'Rear', 'Fin'].flatMap((n) => [
      `${n} jaw - Process value [degC]`,
      `${n} jaw - Set value [degC]`,
      `${n} jaw - Control output [%]`,
    ]),
    'State',
  ];
  const rows = Array.from({ length: 400 }, (_, i) =>
    [
      new Date(Date.UTC(2026, 4, 4) + 5000 * i).toISOString(),
      236 + (i % 5),
      0,
      0,
      233 + (i % 7),
      0,
      0,
      246 - (i % 9),
      0,
      0,
      'Idle',
    ].join('\t'),
  );
  const units = ['', '°C', '°C', '%', '°C', '°C', '%', '°C', '°C', '%', ''].join('\t');
  const { found, zones } = await pourFiles({
    'log.csv': `Data log\n\n${header.join('\t')}\n${units}\n${rows.join('\n')}\n`,
  });
  expect(found.files.map(({ kind }) => kind)).toEqual(['temperature']);
  expect(zones.map(({ timeMs }) => timeMs.length)).toEqual([400, 400, 400]);
});
