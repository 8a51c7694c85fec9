import { expect, test } from 'vitest';
import { gridOfDays, gridOfRoundedDates } from '../../src/read/times/rounded-days.js';
import { workbookOf } from '../make/workbook.js';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2025, 11, 30, 22);
const dayMs = 86_400_000;
/** Days as a spreadsheet counts them: 25569 is 1 January 1970 (ECMA-376 part 1, 18.17.4.1: day 1 is 1 January 1900). */
const daysOf = (ms: number): number => ms / dayMs + 25_569;
const rowCount = 900;
const timesMs = (stepMs: number): number[] => Array.from({ length: rowCount }, (_, i) => startMs + i * stepMs);
const cells = (i: number): string => `${(150 + (i % 7) / 10).toFixed(1)},${(160 + (i % 5) / 10).toFixed(1)}`;
const rows = (stepMs: number, time: (ms: number) => string): string =>
  timesMs(stepMs)
    .map((ms, i) => `${time(ms)},${cells(i)}`)
    .join('\n');

test('dates and clocks in cells of their own', async () => {
  const text = rows(10_000, (ms) => `${Math.floor(daysOf(ms))},${daysOf(ms) % 1}`);
  const book = workbookOf(`Date,Time,Zone 1 PV (°C),Zone 2 PV (°C)\n${text}`, 2);
  const { zones } = await pourFiles({ 'log.xlsx': book });
  expect(zones.map(({ name }) => name)).toEqual(['Zone 1', 'Zone 2']);
  expect(zones[0]!.timeMs).toEqual(timesMs(10_000));
});

test('a date with its clock in one cell is read to the second, midnight as well', async () => {
  const text = rows(10_000, (ms) => String(daysOf(ms)));
  const { zones } = await pourFiles({ 'log.xlsx': workbookOf(`Time,Zone 1 PV (°C),Zone 2 PV (°C)\n${text}`, 1) });
  expect(zones[0]!.timeMs).toEqual(timesMs(10_000));
});

test.each([
  [6, 10_000],
  [6, 500],
  [5, 10_000],
  [5, 7000],
  [4, 60_000],
])('days rounded to %i decimals are put back on the step of %i ms', async (decimals, stepMs) => {
  const text = `Time,Zone 1 PV (°C),Zone 2 PV (°C)\n${rows(stepMs, (ms) => daysOf(ms).toFixed(decimals))}\n`;
  for (const isFast of [true, false]) {
    const { zones, found } = await pourFiles({ 'log.csv': text }, {}, { isFast });
    expect(zones[0]!.timeMs).toEqual(timesMs(stepMs));
    expect(found.files[0]!.samplingMs).toBe(stepMs);
    expect(found.files[0]!.time.why).toContain('were rounded and are put back');
  }
});

test.each([
  [6, 10_000],
  [5, 10_000],
  [5, 7000],
  [4, 60_000],
])('cells shown as dates that were rounded to %i decimals of a day are put back on %i ms', async (decimals, stepMs) => {
  const text = rows(stepMs, (ms) => daysOf(ms).toFixed(decimals));
  const book = workbookOf(`Time,Zone 1 PV (°C),Zone 2 PV (°C)\n${text}`, 1);
  const { zones, found } = await pourFiles({ 'log.xlsx': book });
  expect(zones[0]!.timeMs).toEqual(timesMs(stepMs));
  expect(found.files[0]!.samplingMs).toBe(stepMs);
  expect(found.files[0]!.time.why).toContain('were rounded and are put back');
});

test('so are dates and clocks in cells of their own', async () => {
  const text = rows(10_000, (ms) => `${Math.floor(daysOf(ms))},${(daysOf(ms) % 1).toFixed(5)}`);
  const { zones } = await pourFiles({ 'log.xlsx': workbookOf(`Date,Time,Zone 1 PV (°C),Zone 2 PV (°C)\n${text}`, 2) });
  expect(zones[0]!.timeMs).toEqual(timesMs(10_000));
});

test('dates with true fractions of a second stay as they are', async () => {
  const odd = timesMs(7300).map((ms, i) => ms + ((i * 7919) % 1000));
  expect(gridOfRoundedDates(odd)).toBeNaN();
  expect(gridOfRoundedDates(timesMs(10_000))).toBeNaN();
});

test('times that fit no grid, or too few to tell, stay as they are written', () => {
  const odd = timesMs(7300).map((ms, i) => daysOf(ms + ((i * 7919) % 1000)).toFixed(5));
  expect(gridOfDays(odd)).toBeNaN();
  expect(
    gridOfDays(
      timesMs(7000)
        .slice(0, 5)
        .map((ms) => daysOf(ms).toFixed(5)),
    ),
  ).toBeNaN();
  expect(gridOfDays(timesMs(10_000).map((ms) => daysOf(ms).toFixed(9)))).toBeNaN();
});
