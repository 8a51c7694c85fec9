import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { gather } from '../../src/gather.js';
import { demandZones, survey } from '../../src/read/survey/survey.js';
import { inFolder, pourFiles, pourPaths } from './poured.js';

const rowCount = 400;
const clock = (i: number) => new Date(Date.UTC(2026, 0, 5, 6) + i * 10_000).toISOString();
const log = (header: string, cells: (i: number) => string) =>
  `${header}\n${Array.from({ length: rowCount }, (_, i) => `${clock(i)},${cells(i)}`).join('\n')}\n`;

test('a code that no table knows is learnt, and this is said', async () => {
  const text = log(
    'Time,Zone 1 PV [°C],Zone 2 PV [°C]',
    (i) => `${i > 200 && i < 240 ? 777.7 : 150 + (i % 5) / 10},${160 + (i % 7) / 10}`,
  );
  await inFolder({ 'log.csv': text }, async (folder) => {
    const { result } = await pourPaths([folder]);
    expect(result.learntCodes).toEqual([777.7]);
    expect(result.assumptions).toHaveLength(1);
    expect(result.assumptions[0]).toMatch(/^777\.7 is taken for a code/);
  });
});

test('set points without readings: the columns that are not known are named, and no row counts as repeated', async () => {
  const text = log('Time,Zone 1 SP,Lufimo', (i) => `150,${150 + (i % 5) / 10}`);
  await inFolder({ 'log.csv': text }, async (folder) => {
    const { found, result } = await pourPaths([folder]);
    expect(found.problems.map(({ what }) => what).join()).toContain(
      'no name says which columns are readings; not known are "Lufimo"',
    );
    expect(result.sources[0]).toMatchObject({ rowsRead: rowCount, rowsRejected: 0 });
  });
});

test('rows that stand twice are told of the file that repeats them, also where files are merged', async () => {
  const setpoints = log('Time,Zone 1 SP [°C]', () => '150');
  const readings = log('Time,Zone 1 PV [°C]', (i) => `${150 + (i % 5) / 10}`);
  const twice = readings.replace(/^.*06:10:.*\n/gm, '$&$&');
  await inFolder({ 'a.csv': setpoints, 'b.csv': twice }, async (folder) => {
    const { result } = await pourPaths([folder]);
    expect(result.sources.map(({ file, rejectedByReason }) => [file, rejectedByReason])).toEqual([
      [expect.stringMatching(/a\.csv$/), {}],
      [expect.stringMatching(/b\.csv$/), { repeated: 6 }],
    ]);
  });
});

test.each([
  ['Stato macchina', 'In marcia', 'Ferma'],
  ['Stan', 'Praca', 'Postój'],
  ['État machine', 'Marche', 'Arrêt'],
  ['Estado máquina', 'Marcha', 'Parada'],
])('running in words: %s', async (name, runs, stands) => {
  const text = log(`Time,Zone 1 PV [°C],${name}`, (i) => `${150 + (i % 5) / 10},${i % 40 < 20 ? runs : stands}`);
  await inFolder({ 'log.csv': text }, async (folder) => {
    const { zones } = await pourPaths([folder]);
    expect(zones[0]!.running.slice(15, 25)).toEqual([1, 1, 1, 1, 1, 0, 0, 0, 0, 0]);
  });
});

test.each(['Speed rpm', 'Line speed m/min', 'Bahngeschwindigkeit', 'Geschwindigkeit [m/min]'])(
  'running as speed: %s',
  async (name) => {
    const text = log(`Time,Zone 1 PV [°C],${name}`, (i) => `${150 + (i % 5) / 10},${i % 40 < 20 ? 23.5 : 0.1}`);
    await inFolder({ 'log.csv': text }, async (folder) => {
      const { found, zones } = await pourPaths([folder]);
      const column = found.files[0]!.columns.find(({ role }) => role === 'running')!;
      expect(column.name).toBe(name);
      expect(zones[0]!.running.slice(15, 25)).toEqual([1, 1, 1, 1, 1, 0, 0, 0, 0, 0]);
    });
  },
);

test('the first row left out for each reason stands in the findings, of logs and of lists', async () => {
  const temperatures = log('Time,Zone 1 PV [°C]', (i) => (i === 50 || i === 60 ? '150,1,2' : `${150 + (i % 5) / 10}`));
  const pair = (i: number) => `${clock(i)},Zone 1,Sensor open,Active\n${clock(i + 5)},Zone 1,Sensor open,Cleared\n`;
  const alarms = `Time,Source,Message,State\n${[10, 30, 50, 70].map(pair).join('')}soon,Zone 1,Sensor open,Active\n`;
  await inFolder({ 'log.csv': temperatures, 'alarms.csv': alarms }, async (folder) => {
    const { sources } = await gather([folder], {});
    const shown = sources.map(({ rejectedExamples }) => rejectedExamples);
    expect(shown[0]).toEqual([{ reason: 'long-row', line: 52, text: `${clock(50)},150,1,2` }]);
    expect(shown[1]).toEqual([expect.objectContaining({ line: 10, text: 'soon,Zone 1,Sensor open,Active' })]);
  });
});

test('a packed file that changes behind its beginning loses nothing silently, and says from what it was judged', async () => {
  const line = (i: number, cells: string) => `${new Date(Date.UTC(2026, 0, 5) + i * 1000).toISOString()},${cells}`;
  const before = Array.from({ length: 20_000 }, (_, i) => line(i, `${150 + (i % 7) / 10},${160 + (i % 5) / 10}`));
  const after = Array.from({ length: 500 }, (_, i) => line(20_000 + i, `150.1,160.2,${170 + (i % 3) / 10}`));
  const text = ['Time,Zone 1 PV [°C],Zone 2 PV [°C]', ...before, ...after].join('\n');
  await inFolder({ 'log.csv.gz': gzipSync(`${text}\n`) }, async (folder) => {
    const { result } = await pourPaths([folder]);
    const [source] = result.sources;
    expect(source!.notes.join()).toContain('judged from its beginning');
    expect(source).toMatchObject({ rowsRead: 20_000, rowsRejected: 500, rejectedByReason: { 'long-row': 500 } });
  });
});

test('a refusal says each thing once and ends no sentence twice', async () => {
  const commas = log('Time,Zone 1 PV,Zone 2 PV', (i) => `${150 + (i % 5)},1,${160 + (i % 3)},2`);
  await inFolder({ 'log.csv': commas, 'notes.csv': '', 'noise.csv': new Uint8Array(4000).fill(3) }, async (folder) => {
    const found = await survey([folder]);
    expect(() => demandZones(found)).toThrow(/no rule can tell which is which\. .*Export it again with semicolons/);
    try {
      demandZones(found);
    } catch (error) {
      const { message } = error as Error;
      expect(message).not.toMatch(/\.\./);
      expect(message.match(/no rule can tell/g)).toHaveLength(1);
    }
  });
});

test('more zones than one run takes are refused before they are read, with what to do', async () => {
  const zones = Array.from({ length: 5001 }, (_, zone) => `Zone ${zone + 1} PV`);
  const text = log(['Time', ...zones].join(), (i) => zones.map(() => String(150 + (i % 5))).join());
  await inFolder({ 'log.csv': text }, async (folder) => {
    const found = await survey([folder]);
    expect(() => demandZones(found)).toThrow(/hold 5001 zones .* one run takes 5000\. .*some machines at a time/);
  });
});

test('a packed file that begins cold shows further on that its numbers are tenths of a degree', async () => {
  const degC10 = (i: number): number => (i < 60_000 ? 190 + (i % 9) : 1500 + (i % 12));
  const lines = Array.from(
    { length: 160_000 },
    (_, i) => `${new Date(Date.UTC(2026, 0, 5) + i * 1000).toISOString()},${degC10(i)}`,
  );
  const text = `Time,Zone 1 PV [°C]\n${lines.join('\n')}\n`;
  await inFolder({ 'log.csv.gz': gzipSync(text) }, async (folder) => {
    const { result } = await pourPaths([folder]);
    expect(result.sources[0]!.notes.join()).toContain('tenths of a degree');
  });
});

test('a log of some days that begins and ends cold shows in between that it counts tenths', async () => {
  const lines = Array.from({ length: 8640 }, (_, i) => {
    const hour = (i / 120) % 24;
    const isHot = hour >= 7 && hour < 21;
    return `${new Date(Date.UTC(2026, 4, 4) + i * 30_000).toISOString()},${isHot ? 1600 + (i % 5) : 181 + (i % 3)},${isHot ? 1600 : 0}`;
  });
  const { zones } = await pourFiles({ 'log.csv': `Time,Knife PV,Knife SP\n${lines.join('\n')}\n` });
  expect(Math.max(...zones[0]!.readingDegC)).toBeCloseTo(160.4, 6);
});

test('a log that is hot for a few hours every second day counts tenths, and one in whole degrees with codes does not', async () => {
  const log = (cold: number, hot: (i: number) => number): string =>
    `Time,Knife PV,Anvil PV\n${Array.from({ length: 8640 }, (_, i) => {
      const value = i % 2880 >= 2500 && i % 2880 < 2750 ? hot(i) : cold + (i % 3);
      return `${new Date(Date.UTC(2026, 4, 4) + i * 60_000).toISOString()},${value},${value + 2}`;
    }).join('\n')}\n`;
  const packed = await pourFiles({ 'log.csv': log(181, (i) => 1600 + (i % 5)) });
  expect(Math.max(...packed.zones[0]!.readingDegC)).toBeCloseTo(160.4, 6);
  const whole = await pourFiles({ 'log.csv': log(18, (i) => (i % 40 === 0 ? 9999 : 160 + (i % 5))) });
  expect(whole.zones[0]!.readingDegC[2501]).toBe(161);
});
