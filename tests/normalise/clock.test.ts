import { describe, expect, test } from 'vitest';
import { LogClock, LoggerHabit, zoneOffset } from '../../src/normalise/clock.js';

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
describe('a logger that stays on winter time', () => {
  const rows = (day: string, from: number, to: number): number[] =>
    Array.from({ length: (to - from) * 6 }, (_, i) => utc(`${day}T00:00:00`) + from * 3_600_000 + i * 600_000);

  test('in spring its rows go on in steps of one length, and are read so from there on', async () => {
    const clock = new LogClock(await zoneOffset('Europe/Oslo'));
    const shown = rows('2026-03-29', 0, 30).map((ms) => clock.toUtc(ms));
    expect(new Set(shown.slice(1).map((ms, i) => ms - shown[i]!))).toEqual(new Set([600_000]));
    expect([clock.missingHourRows, clock.fixedOffset]).toEqual([6, 60]);
  });
  test('what one file shows holds for the next of the same logger', async () => {
    const offset = await zoneOffset('Europe/Oslo');
    const habit = new LoggerHabit();
    const first = new LogClock(offset, habit);
    for (const ms of rows('2026-03-29', 0, 24)) first.toUtc(ms);
    const next = new LogClock(offset, habit);
    expect(new Date(next.toUtc(utc('2026-03-30T00:00:00'))).toISOString()).toBe('2026-03-29T23:00:00.000Z');
  });
  test('one row in the hour that does not exist is no proof', async () => {
    const clock = new LogClock(await zoneOffset('Europe/Oslo'));
    for (const time of ['01:59', '02:00', '03:01']) clock.toUtc(utc(`2026-03-29T${time}:00`));
    expect(clock.fixedOffset).toBeNaN();
  });
  test('in autumn the hour stands once, which is told; one that goes back is not', async () => {
    const once = new LogClock(await zoneOffset('Europe/Oslo'));
    for (const ms of rows('2026-10-25', 0, 6)) once.toUtc(ms);
    expect(once.unrepeatedHoursMs).toEqual([utc('2026-10-25T02:00:00')]);
    const twice = new LogClock(await zoneOffset('Europe/Oslo'));
    for (const ms of [...rows('2026-10-25', 0, 3), ...rows('2026-10-25', 2, 6)]) twice.toUtc(ms);
    expect(twice.unrepeatedHoursMs).toEqual([]);
    const broken = new LogClock(await zoneOffset('Europe/Oslo'));
    for (const ms of [...rows('2026-10-25', 0, 2), ...rows('2026-10-25', 5, 6)]) broken.toUtc(ms);
    expect(broken.unrepeatedHoursMs).toEqual([]);
  });
});
test('a zone without summer time', async () => {
  const clock = new LogClock(await zoneOffset('Asia/Kolkata'));
  expect(new Date(clock.toUtc(utc('2026-07-01T05:30:00'))).toISOString()).toBe('2026-07-01T00:00:00.000Z');
});
test('a name that is no zone is refused', async () => {
  await expect(zoneOffset('Mars/Base')).rejects.toThrow(RangeError);
});
