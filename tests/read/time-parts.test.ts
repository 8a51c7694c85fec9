import { expect, test } from 'vitest';
import { pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 1, 28, 23, 50);
const timesMs = Array.from({ length: 200 }, (_, i) => startMs + i * 10_000);
const values = (i: number, mark = '.'): string[] => [`150${mark}${i % 7}`, `160${mark}${i % 5}`];
const at = (ms: number) => {
  const date = new Date(ms);
  const two = (number: number): string => String(number).padStart(2, '0');
  return {
    ...{ year: String(date.getUTCFullYear()), month: String(date.getUTCMonth() + 1), day: String(date.getUTCDate()) },
    ...{ hour: String(date.getUTCHours()), minute: String(date.getUTCMinutes()), second: String(date.getUTCSeconds()) },
    ...{ date: date.toISOString().slice(0, 10), clock: date.toISOString().slice(11, 19), two },
  };
};

type At = ReturnType<typeof at>;

test.each<[string, string, (time: At) => string[], string]>([
  [
    'six columns',
    'Year;Month;Day;Hour;Minute;Second;Z1 PV;Z2 PV',
    (t) => [t.year, t.month, t.day, t.hour, t.minute, t.second],
    '.',
  ],
  [
    'six columns in German, day first, decimal comma',
    'Tag;Monat;Jahr;Stunde;Minute;Sekunde;Zone 1 Istwert;Zone 2 Istwert',
    (t) => [t.two(+t.day), t.two(+t.month), t.year, t.two(+t.hour), t.two(+t.minute), t.two(+t.second)],
    ',',
  ],
  [
    'six columns counted in fractions, years of two digits',
    'Yr;MO;DD;HH;MI;SS;Z1 PV;Z2 PV',
    (t) => [t.year.slice(2), `${t.month}.0`, `${t.day}.0`, `${t.hour}.0`, `${t.minute}.0`, `${t.second}.0`],
    '.',
  ],
  [
    'three columns, months by name, and a clock',
    'Année;Mois;Jour;Heure;Z1 mesure;Z2 mesure',
    (t) => [t.year, t.month === '2' ? 'févr.' : 'mars', t.day, t.clock],
    '.',
  ],
  [
    'a date, then hour, minute and second',
    'Date;Hour;Min;Sec;Z1 PV;Z2 PV',
    (t) => [t.date, t.hour, t.minute, t.second],
    '.',
  ],
])('a time in %s is put together', async (_, header, timeCells, mark) => {
  const rows = timesMs.map((ms, i) => [...timeCells(at(ms)), ...values(i, mark)].join(';'));
  for (const isFast of [true, false]) {
    const { found, zones } = await pourFiles({ 'log.csv': `${header}\n${rows.join('\n')}\n` }, {}, { isFast });
    expect(found.zones).toHaveLength(2);
    expect(zones[0]!.timeMs).toEqual(timesMs);
    expect(zones[1]!.readingDegC.slice(0, 3)).toEqual([160, 160.1, 160.2]);
    expect(found.files[0]!.samplingMs).toBe(10_000);
  }
});

test('without names the usual order is known; a column of smallest values is no minute', async () => {
  const rows = timesMs.map((ms, i) => {
    const { year, month, day, hour, minute, second } = at(ms);
    return [year, month, day, hour, minute, second, ...values(i)].join(',');
  });
  const bare = await pourFiles({ 'log.csv': `${rows.join('\n')}\n` });
  expect(bare.zones).toHaveLength(2);
  expect(bare.zones[0]!.timeMs).toEqual(timesMs);
  const lowest = timesMs.map((ms) => `${at(ms).date} ${at(ms).clock};20;151.5`);
  const other = await pourFiles({ 'log.csv': `Time;Min;Z1 PV\n${lowest.join('\n')}\n` });
  expect(other.zones[0]!.timeMs).toEqual(timesMs);
});

test('tag and value behind a time in parts make a long log', async () => {
  const rows = timesMs.flatMap((ms, i) => {
    const { year, month, day, hour, minute, second } = at(ms);
    return ['Z1 PV', 'Z2 PV'].map((tag, k) => [year, month, day, hour, minute, second, tag, values(i)[k]].join(';'));
  });
  const { found, zones } = await pourFiles({
    'log.csv': `Year;Month;Day;Hour;Minute;Second;Tag;Value\n${rows.join('\n')}\n`,
  });
  expect(found.files[0]!.layout).toBe('long');
  expect(zones.map(({ name }) => name)).toEqual(['Z1', 'Z2']);
  expect(zones[1]!.timeMs).toEqual(timesMs);
});
