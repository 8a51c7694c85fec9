import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync, strFromU8 } from 'fflate';
import { DateTime } from 'luxon';
import { afterAll, describe, expect, test } from 'vitest';
import { isSplit, timeWriter } from '../make/log/time-text.js';
import type { LogFormat, TimeStyle } from '../make/log/log-format.js';
import { plainFault, smallPlant, type SmallPlantWish } from '../make/small-plant.js';
import { plantBlocks } from '../make/plant-blocks.js';
import { writePlant } from '../make/write-plant.js';
import { plantOfSeed } from '../make/write-plants.js';
import { readingState } from '../../src/model/sample-block.js';

const folders: string[] = [];
function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'looselead-logs-'));
  folders.push(made);
  return made;
}
afterAll(() => folders.forEach((made) => rmSync(made, { recursive: true })));

function filesOf(path: string): Record<string, string> {
  return Object.fromEntries(
    readdirSync(path)
      .sort()
      .map((name) => {
        const bytes = readFileSync(join(path, name));
        return [name, name.endsWith('.gz') ? strFromU8(gunzipSync(bytes)) : bytes.toString('utf8')];
      }),
  );
}

const wish: SmallPlantWish = { days: 2, zones: 2, everyS: 60, faults: [plainFault('sensor_open', 0, 1.4)] };
function written(format: Partial<LogFormat>): Record<string, string> {
  const path = folder();
  writePlant(smallPlant({ ...wish, format }), path);
  return filesOf(path);
}

describe('log writers', () => {
  test('the same seed gives the same bytes', () => {
    const [a, b] = [folder(), folder()];
    writePlant(plantOfSeed(77, { cellLimit: 40_000, days: 2 }), a);
    writePlant(plantOfSeed(77, { cellLimit: 40_000, days: 2 }), b);
    for (const name of readdirSync(a))
      expect(readFileSync(join(a, name)).equals(readFileSync(join(b, name))), name).toBe(true);
    expect(readdirSync(a)).toEqual(readdirSync(b));
  });

  const momentMs = Date.UTC(2026, 6, 5, 14, 3, 9);
  const readBack: Partial<Record<TimeStyle, string>> = {
    iso: 'yyyy-MM-dd HH:mm:ss',
    'iso-t': "yyyy-MM-dd'T'HH:mm:ss",
    'iso-ms': 'yyyy-MM-dd HH:mm:ss.SSS',
    'slash-ymd': 'yyyy/MM/dd HH:mm:ss',
    'dots-dmy': 'dd.MM.yyyy HH:mm:ss',
    'dots-dmy-short': 'dd.MM.yy HH:mm:ss',
    'slash-dmy': 'dd/MM/yyyy HH:mm:ss',
    'slash-mdy-12h': 'M/d/yyyy h:mm:ss a',
    'month-name': 'dd-LLL-yyyy HH:mm:ss',
    compact: "yyyyMMdd'T'HHmmss",
    'split-iso': 'yyyy-MM-dd;HH:mm:ss',
    'split-dots': 'dd.MM.yyyy;HH:mm:ss',
    'split-us': 'M/d/yyyy;h:mm:ss a',
  };
  test.each(Object.entries(readBack))('time style %s is read back by its own pattern', (style, pattern) => {
    const text = timeWriter(style as TimeStyle, null, ';')(momentMs);
    expect(DateTime.fromFormat(text, pattern, { zone: 'utc', locale: 'en' }).toMillis()).toBe(momentMs);
    expect(isSplit(style as TimeStyle)).toBe(text.includes(';'));
  });

  test('epochs and times with a zone are the same instant', () => {
    expect(timeWriter('epoch-ms', null, ',')(momentMs)).toBe(String(momentMs));
    expect(timeWriter('epoch-s', null, ',')(momentMs)).toBe(String(momentMs / 1000));
    expect(Date.parse(timeWriter('iso-t-z', 'Europe/Oslo', ',')(momentMs))).toBe(momentMs);
    expect(timeWriter('iso-t-offset', 'Europe/Oslo', ',')(momentMs)).toBe('2026-07-05T16:03:09+02:00');
    expect(timeWriter('dots-dmy', 'Europe/Oslo', ',')(momentMs)).toBe('05.07.2026 16:03:09');
  });

  test('wide: a header, a line per minute, the code while open', () => {
    const { 'temperatures.csv': text } = written({});
    const lines = text!.trimEnd().split('\r\n');
    expect(lines[0]).toBe('Date/Time;Zone 1.PV;Zone 1.SP;Zone 1.OP;Zone 2.PV;Zone 2.SP;Zone 2.OP;Running');
    expect(lines.length).toBe(1 + 2 * 1440);
    expect(lines.at(-1)!.split(';')[1]).toBe('3276,7');
  });

  test.each([
    ['text', { codes: { high: 850, low: -200, text: '####' } }, '####'],
    ['tenths as integers', { tenthsAsIntegers: true }, '32767'],
    ['°F', { unit: 'F', codes: { high: 1562, low: -328, text: null } }, '1562'],
  ] as const)('the open reads as %s', (_name, format, code) => {
    const { 'temperatures.csv': text } = written(format);
    expect(text!.trimEnd().split('\r\n').at(-1)!.split(';')[1]).toBe(code);
  });

  test('°F readings are the °C readings × 1.8 + 32', () => {
    const cellsOf = (files: Record<string, string>): number[] =>
      files['temperatures.csv']!.trimEnd()
        .split('\r\n')
        .slice(1, 1000)
        .map((line) => Number(line.split(';')[4]));
    const celsius = cellsOf(written({ decimal: '.', digits: 2 }));
    const fahrenheit = cellsOf(written({ decimal: '.', digits: 2, unit: 'F' }));
    for (let i = 0; i < celsius.length; i++)
      expect(Math.abs(celsius[i]! * 1.8 + 32 - fahrenheit[i]!)).toBeLessThan(0.02);
  });

  test('long by change of value says less than long, and quality goes bad with the open', () => {
    const long = written({ layout: 'long', quality: 'column' })['temperatures.csv']!.trimEnd().split('\r\n');
    const changes = written({ layout: 'long', isChangeOfValue: true, quality: 'column' })
      ['temperatures.csv']!.trimEnd()
      .split('\r\n');
    expect(long.length).toBe(1 + 2 * 1440 * 7);
    expect(changes.length).toBeLessThan(long.length / 2);
    expect(changes[0]).toBe('Date/Time;tag;value;quality');
    expect(changes.filter((line) => line.includes('Zone 1.PV;3276,7;Bad')).length).toBeGreaterThan(0);
  });

  test('files a day, a zone and a machine', () => {
    expect(Object.keys(written({ layout: 'wide-daily' }))).toContain('temperatures-2026-09-08.csv');
    expect(Object.keys(written({ layout: 'file-per-zone' }))).toContain('temperatures-zone-2.csv');
    const bare = written({ layout: 'file-per-zone', isZoneInFileNameOnly: true });
    expect(bare['Zone 2.csv']!.split('\r\n')[0]).toBe('Date/Time;PV;SP;OP;Running');
    expect(Object.keys(written({ layout: 'file-per-machine' }))).toContain('temperatures-m1.csv');
  });

  test('alarms as spans and as events tell the same open', () => {
    const { alarms } = smallPlant().parameters.format;
    const spans = written({})
      ['alarms.csv']!.split('\r\n')
      .filter((line) => line.includes('Zone 1: temperature input open'));
    const events = written({ alarms: { ...alarms, layout: 'events' } })
      ['alarms.csv']!.split('\r\n')
      .filter((line) => line.includes('Zone 1: temperature input open') && line.includes('Active'));
    expect(spans.length).toBe(1);
    expect(events.length).toBe(1);
    expect(events[0]!.split(';')[0]).toBe(spans[0]!.split(';')[0]);
  });

  test('blocks of a plant hold what the file holds', () => {
    const plant = smallPlant(wish);
    const [open, healthy] = plantBlocks(plant);
    expect(open!.length).toBe(2 * 1440);
    expect(open!.state.at(-1)).toBe(readingState.aboveScale);
    expect(healthy!.state.every((state) => state === readingState.good)).toBe(true);
    expect(healthy!.timeMs[1]! - healthy!.timeMs[0]!).toBe(60_000);
  });
});
