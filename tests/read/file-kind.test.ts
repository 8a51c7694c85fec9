import { expect, test } from 'vitest';
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
