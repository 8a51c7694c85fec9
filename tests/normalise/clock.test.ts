import { expect, test } from 'vitest';
import { LogClock, zoneOffset } from '../../src/normalise/clock.js';

// European Union summer time 2026: from 29 March 01:00 UTC to 25 October 01:00 UTC (directive 2000/84/EC).
const utc = (text: string): number => Date.parse(`${text}Z`);

test('the hour that stands twice is read twice', async () => {
  const clock = new LogClock(await zoneOffset('Europe/Oslo'));
  const shown = ['01:30', '02:00', '02:30', '02:00', '02:30', '03:00'].map((time) =>
    clock.toUtc(utc(`2026-10-25T${time}:00`)),
  );
  expect(shown.map((ms) => new Date(ms).toISOString().slice(11, 16))).toEqual([
    '23:30',
    '00:00',
    '00:30',
    '01:00',
    '01:30',
    '02:00',
  ]);
  expect(clock.missingHourRows).toBe(0);
});
test('the hour that is left out is counted', async () => {
  const clock = new LogClock(await zoneOffset('Europe/Oslo'));
  const shown = ['01:30', '02:30', '03:30'].map((time) => clock.toUtc(utc(`2026-03-29T${time}:00`)));
  expect(new Date(shown[0]!).toISOString()).toContain('T00:30');
  expect(new Date(shown[2]!).toISOString()).toContain('T01:30');
  expect(clock.missingHourRows).toBe(1);
});
test('a zone without summer time', async () => {
  const clock = new LogClock(await zoneOffset('Asia/Kolkata'));
  expect(new Date(clock.toUtc(utc('2026-07-01T05:30:00'))).toISOString()).toBe('2026-07-01T00:00:00.000Z');
});
test('a name that is no zone is refused', async () => {
  await expect(zoneOffset('Mars/Base')).rejects.toThrow(RangeError);
});
