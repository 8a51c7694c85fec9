import { expect, test } from 'vitest';
import { readEvents, type Events } from '../../../src/intake/read-events.js';
import { inFolder, pourPaths } from '../poured.js';

const startMs = Date.UTC(2026, 2, 2, 6);
const clock = (minute: number): string =>
  new Date(startMs + minute * 60_000).toISOString().slice(0, 19).replace('T', ' ');
const rows = Array.from({ length: 300 }, (_, i) => `${clock(i)},${150 + (i % 3) / 10},${160 + (i % 4) / 10}`);
const log = `Time,Zone 1 PV,Zone 2 PV\n${rows.join('\n')}\n`;
/** Each alarm comes at one of these minutes and goes two later. */
const minutes = [30, 90, 150, 210];

async function eventsOf(name: string, lines: readonly string[]): Promise<Events> {
  return inFolder({ 'log.csv': log, [name]: `${lines.join('\n')}\n` }, async (folder) => {
    const { found, result } = await pourPaths([folder]);
    return readEvents(found.files, result.zones, found.plant, result.eventOptions);
  });
}

const pairs = (come: (time: string) => string, gone: (time: string) => string): string[] =>
  minutes.flatMap((minute) => [come(clock(minute)), gone(clock(minute + 2))]);

test.each([
  [
    'alarms.txt',
    pairs(
      (time) => `${time} ALARM Zone 2 sensor break`,
      (time) => `${time} CLEAR Zone 2 sensor break`,
    ),
  ],
  [
    'events.log',
    pairs(
      (time) => `[${time}] [WARN] Zone 2: sensor break active`,
      (time) => `[${time}] [INFO] Zone 2: sensor break cleared`,
    ),
  ],
  [
    'zone numbers.csv',
    [
      'Time;Zone;Event',
      ...pairs(
        (time) => `${time};2;Sensor break`,
        (time) => `${time};2;Sensor break cleared`,
      ),
    ],
  ],
  [
    'alarms.jsonl',
    pairs(
      (time) => JSON.stringify({ time, zone: 2, text: 'Sensor break', state: 'on' }),
      (time) => JSON.stringify({ time, zone: 2, text: 'Sensor break', state: 'off' }),
    ),
  ],
  [
    'alarms.log',
    pairs(
      (time) => `${time} level=ALARM zone=2 msg="Sensor break" state=active`,
      (time) => `${time} level=ALARM zone=2 msg="Sensor break" state=cleared`,
    ),
  ],
])('%s', async (name, lines) => {
  const { alarms } = await eventsOf(name, lines);
  expect([...alarms].map(({ startMs: fromMs, endMs, zone }) => [fromMs, endMs, zone])).toEqual(
    minutes.map((minute) => [startMs + minute * 60_000, startMs + (minute + 2) * 60_000, 1]),
  );
});

test.each([
  [['Alarm;Count;First;Last', `Zone 2 sensor break;4;${clock(30)};${clock(210)}`]],
  [['Meldung;Anzahl;Erstes Auftreten;Letztes Auftreten', `Zone 2 Fühlerbruch;4;${clock(30)};${clock(210)}`]],
])('a list of how often each alarm came is told and not counted', async (lines) => {
  const { alarms, problems } = await eventsOf('alarms.csv', lines);
  expect(alarms).toHaveLength(0);
  expect(problems.map(({ what }) => what).join()).toContain('how often each alarm came');
});
