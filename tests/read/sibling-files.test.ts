import { describe, expect, test } from 'vitest';
import { strToU8, zipSync } from 'fflate';
import { pourFiles } from './poured.js';

const pad = (n: number): string => String(n).padStart(2, '0');
const startMs = Date.UTC(2026, 2, 4);

/** Rows of a minute from hour to hour, hot from 07:00 to 21:00; times day first. */
function shift(from: number, to: number, header: string, cells: (isHot: boolean, i: number) => string): string {
  const lines = Array.from({ length: (to - from) * 60 }, (_, i) => {
    const time = new Date(startMs + from * 3_600_000 + i * 60_000);
    const date = `${pad(time.getUTCDate())}/${pad(time.getUTCMonth() + 1)}/${time.getUTCFullYear()}`;
    const hour = time.getUTCHours();
    return `${date} ${time.toISOString().slice(11, 19)},${cells(hour >= 7 && hour < 21, i)}`;
  });
  return `${header}\n${lines.join('\n')}\n`;
}

const tenths = (isHot: boolean, i: number): string =>
  `${isHot ? 1600 + (i % 5) : 181 + (i % 3)},${isHot ? 1600 : 0},${isHot ? (0.4 + (i % 3) / 100).toFixed(2) : '0'}`;

test('units and scales that one shift shows hold for the others of the same logger', async () => {
  const header = 'Time,Knife PV,Knife SP,Knife OUT';
  const { zones, found } = await pourFiles({
    'night.csv': shift(0, 6, header, tenths),
    'day.csv': shift(6, 20, header, tenths),
  });
  expect(zones).toHaveLength(1);
  expect(zones[0]!.readingDegC[0]).toBeCloseTo(18.1, 6);
  expect(Math.max(...zones[0]!.readingDegC)).toBeCloseTo(160.4, 6);
  expect(Math.max(...zones[0]!.outputPercent)).toBeCloseTo(42, 6);
  expect(found.problems.filter(({ code }) => code === 'ambiguous-unit')).toEqual([]);
});

test('a file that does not tell day from month follows one with the same header that does', async () => {
  const header = 'Time,Knife PV,Knife SP,Knife OUT';
  const files = { 'a.csv': shift(0, 24, header, tenths), 'b.csv': shift(12 * 24, 13 * 24, header, tenths) };
  const both = await pourFiles(files); // 4 March, and 16 March, which no month-first reading allows
  expect(both.found.problems.filter(({ code }) => code === 'ambiguous-time')).toEqual([]);
  expect(both.zones[0]!.timeMs[0]).toBe(startMs);
  expect(both.found.files.find(({ name }) => name.endsWith('a.csv'))!.time.why).toBe(
    'day first: other files with the same header show it',
  );
  const alone = await pourFiles({ 'a.csv': files['a.csv'] });
  expect(alone.found.problems.map(({ code }) => code)).toContain('ambiguous-time');
});

test('folders are machines where no name says one, and folders of days are not', async () => {
  const of = (zone: string): string => shift(0, 24, `Time,${zone} PV,${zone} SP,${zone} OUT`, tenths);
  const apart = await pourFiles({ 'Bagger/log.csv': of('Jaw'), 'Gluer/log.csv': of('Pot') });
  expect(apart.zones.map(({ name, machine }) => [name, machine])).toEqual([
    ['Jaw', 'Bagger'],
    ['Pot', 'Gluer'],
  ]);
  const later = shift(24, 48, 'Time,Jaw PV,Jaw SP,Jaw OUT', tenths);
  const days = await pourFiles({ 'monday/log.csv': of('Jaw'), 'tuesday/log.csv': later });
  expect(days.zones.map(({ name, machine }) => [name, machine])).toEqual([['Jaw', 'Machine']]);
});

describe('two machines that nothing names', () => {
  const startMs = Date.UTC(2026, 8, 6);
  const log = (degC: number, phaseS = 0): string => {
    const rows = Array.from({ length: 600 }, (_, i) => {
      const time = new Date(startMs + i * 10_000 + phaseS * 1000).toISOString().slice(0, 19);
      return `${time},${(degC + ((i * 7) % 11) / 10).toFixed(1)},${degC},${(degC + ((i * 5) % 13) / 10).toFixed(1)},${degC}`;
    });
    return `Time,Zone 1 PV (°C),Zone 1 SP (°C),Zone 2 PV (°C),Zone 2 SP (°C)\n${rows.join('\n')}\n`;
  };

  test.each<[string, Record<string, string>, string[]]>([
    ['by their files', { 'data.csv': log(150), 'export.csv': log(160) }, ['data', 'export']],
    ['by their folders', { 'a/log.csv': log(150), 'b/log.csv': log(160) }, ['a', 'b']],
    ['at times of their own', { 'data.csv': log(150), 'export.csv': log(160, 3) }, ['data', 'export']],
    ['at times and values near each other', { 'data.csv': log(150), 'export.csv': log(150.6, 3) }, ['data', 'export']],
    ['under one machine that both name', { 'M1 x.csv': log(150), 'M1 y.csv': log(160) }, ['M1 M1 x', 'M1 M1 y']],
  ])('are kept apart %s, and this is told', async (_, files, machines) => {
    const { found, result, zones } = await pourFiles(files);
    expect(zones.map(({ machine }) => machine)).toEqual([machines[0], machines[0], machines[1], machines[1]]);
    expect(new Set(zones.map(({ name }) => name)).size).toBe(4);
    for (const zone of zones) expect(zone.timeMs).toHaveLength(600);
    expect(result.sources.map(({ rowsRejected }) => rowsRejected)).toEqual([0, 0]);
    const told = found.problems.filter(({ code }) => code === 'ambiguous-layout');
    expect(told).toHaveLength(1);
    expect(told[0]!.what).toContain(`taken for those of 2 machines, "${machines[0]}", "${machines[1]}"`);
  });

  test('a file that repeats another, whole or in part, is no second machine', async () => {
    const [header, ...rows] = log(150).trim().split('\n');
    const part = `${header}\n${rows.slice(300).join('\n')}\n`;
    const { found, zones } = await pourFiles({ 'data.csv': log(150), 'export.csv': part });
    expect(zones).toHaveLength(2);
    expect(found.problems.filter(({ code }) => code === 'ambiguous-layout')).toEqual([]);
  });
});

/** Rows of a minute of one day; the date as it stands. */
const ofDay = (date: string, offset: number): string =>
  `Time,Zone 1 PV,Zone 1 SP\n${Array.from({ length: 120 }, (_, i) => `${date} ${pad(6 + Math.floor(i / 60))}:${pad(i % 60)}:00,${(180 + offset + (i % 7) / 10).toFixed(1)},${180 + offset}`).join('\n')}\n`;

describe('a packed folder for each machine, a file for each day', () => {
  const files = Object.fromEntries(
    ['Sealer A', 'Sealer B'].flatMap((machine, k) =>
      ['03/02', '03/03', '03/04'].map((day) => [
        `${machine}/log ${day.replace('/', '-')}.csv`,
        strToU8(ofDay(`${day}/2026`, 7 * k)),
      ]),
    ),
  );

  test('folders inside the archive are the machines, and the days follow each other', async () => {
    const { zones, found } = await pourFiles({ 'logs.zip': zipSync(files) });
    expect(zones.map(({ machine, setpointDegC }) => [machine, setpointDegC[0]])).toEqual([
      ['Sealer A', 180],
      ['Sealer B', 187],
    ]);
    expect(zones.map(({ timeMs }) => new Date(timeMs.at(-1)!).toISOString().slice(0, 10))).toEqual([
      ...['2026-03-04', '2026-03-04'],
    ]);
    expect(found.files[0]!.time.why).toBe('month first: so the files with the same header follow each other');
    expect(found.problems.filter(({ code }) => code === 'ambiguous-time')).toEqual([]);
  });

  test('one file alone stays undecided', async () => {
    const { found } = await pourFiles({ 'log.csv': ofDay('03/02/2026', 0) });
    expect(found.files[0]!.time.isUndecided).toBe(true);
  });
});

test('a day of rest of a log of changes, in which only its sign of life is written, is read as one', async () => {
  const stamp = (ms: number): string => new Date(startMs + ms).toISOString().slice(0, 19).replace('T', ' ');
  const row = (ms: number, jaw: number, degC: number): string => `${stamp(ms)},Jaw ${jaw} PV,${degC.toFixed(1)}`;
  const jaws = [1, 2, 3];
  // At work a jaw moves in two steps of three and is written only then; at rest each stands and is written every 5 min.
  const work = Array.from({ length: 2000 }, (_, i) =>
    jaws.flatMap((jaw) => ((i + jaw) % 3 === 0 ? [] : [row(i * 15_000, jaw, 150 + jaw + ((i * 7 + jaw) % 11) / 10)])),
  );
  const rest = Array.from({ length: 200 }, (_, i) => jaws.map((jaw) => row(86_400_000 + i * 300_000, jaw, 20 + jaw)));
  const file = (rows: readonly string[][]): string => `Time,tag,value\n${rows.flat().join('\n')}\n`;
  const isOfChanges = async (files: Record<string, string>) =>
    (await pourFiles(files)).found.files.map(({ isChangeLogged, samplingMs }) => [isChangeLogged, samplingMs]);
  expect(await isOfChanges({ 'work.csv': file(work), 'rest.csv': file(rest) })).toEqual([
    [true, 15_000],
    [true, 15_000],
  ]);
  expect(await isOfChanges({ 'rest.csv': file(rest) })).toEqual([[false, 300_000]]);
});
