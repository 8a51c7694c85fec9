import { expect, test } from 'vitest';
import { namedZone, readEventTexts } from '../make/event-file.js';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 2, 2, 6);
const rowsOf = (cell: (date: string, clock: string) => string): string =>
  Array.from({ length: 300 }, (_, i) => {
    const [date, clock] = new Date(startMs + i * 10_000).toISOString().slice(0, 19).split('T');
    return `${cell(date!, clock!)};${180 + (i % 7) / 10}\n`;
  }).join('');
const whole = rowsOf((date, clock) => `${date} ${clock}`);
const firstMs = async (text: string): Promise<number> => {
  const { zones } = await pourFiles({ 'log.csv': text }, { timezone: 'Europe/Oslo' });
  return zones[0]!.timeMs[0]!;
};

test.each(['Time (UTC)', 'Timestamp UTC', 'utc_time', 'TimeUTC', 'Date/Time [GMT]', 'UTC'])(
  'times below "%s" are in UTC, whatever the time zone of the plant',
  async (name) => {
    expect(await firstMs(`${name};Zone 1 PV\n${whole}`)).toBe(startMs);
  },
);

test('a date and a clock, and a line above the rows', async () => {
  const apart = rowsOf((date, clock) => `${date};${clock}`);
  expect(await firstMs(`Date (UTC);Time (UTC);Zone 1 PV\n${apart}`)).toBe(startMs);
  expect(await firstMs(`Time zone: UTC\nTime;Zone 1 PV\n${whole}`)).toBe(startMs);
});

// Winter time of Norway is UTC+1 (IANA time zone database).
test.each(['Time', 'Local time', 'Time (UTC+01:00)', 'Local time (UTC offset 1 h)'])(
  'times below "%s" are on the clock of the plant',
  async (name) => {
    expect(await firstMs(`${name};Zone 1 PV\n${whole}`)).toBe(startMs - 3_600_000);
  },
);

test('the same in a list of alarms', async () => {
  const list = (name: string) => `${name};Zone;Alarm;State\n2026-03-02 06:10:00;Zone 1;Sensor break;Active\n`;
  const toUtc = (clockMs: number) => clockMs - 3_600_000;
  const startOf = async (name: string): Promise<number> =>
    (await readEventTexts({ 'alarms.csv': list(name) }, [namedZone(0, 'Zone 1')], undefined, { toUtc })).alarms[0]!
      .startMs;
  expect(await startOf('Time (UTC)')).toBe(startMs + 600_000);
  expect(await startOf('Time')).toBe(startMs + 600_000 - 3_600_000);
});
