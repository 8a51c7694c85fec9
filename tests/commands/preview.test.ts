import { expect, test } from 'vitest';
import { lookAt } from '../../src/commands/preview/preview-facts.js';
import { previewLine, previewText } from '../../src/commands/preview/preview-text.js';
import { parsePlantFile } from '../../src/read/plant/plant-text.js';
import { textWidth } from '../../src/commands/terminal/text-width.js';
import { inFolder, pourPaths } from '../read/poured.js';

const time = (i: number): string =>
  new Date(Date.UTC(2026, 8, 13) + i * 30_000).toISOString().slice(0, 19).replace('T', ' ');
const row = (i: number): string =>
  `${time(i)};${(22 + i / 10).toFixed(1).replace('.', ',')};${i === 140 ? '####' : '21,5'};${i % 2}`;
const log = `Export of line 4\nTime;M1 Front jaw PV (°C);M1 Rear jaw PV (°C);Humidity\n${Array.from({ length: 60 }, (_, i) => (i === 50 ? 'broken;1;2;3' : row(i < 30 ? i : i + 100))).join('\n')}\n`;

test('says what the file was taken for, what was left out and what is missing', async () => {
  const preview = await inFolder({ 'log.csv': log }, (folder) => lookAt([folder], {}));
  const [file] = preview.files;
  expect(file).toMatchObject({
    kind: 'temperature',
    layout: 'wide, semicolon, decimal comma',
    samplingSeconds: 30,
    rowsRead: 59,
    rowsRejected: 1,
  });
  expect(file!.examples).toEqual([{ line: 53, reason: 'the time cannot be read', text: 'broken;1;2;3' }]);
  expect(file!.leftAlone.map((it) => it.column)).toEqual(['Humidity']);
  expect(preview.zones[0]).toMatchObject({
    zone: 'M1 Front jaw',
    machine: 'M1',
    unit: '°C',
    samples: 59,
    gaps: 1,
    longestGapMinutes: 50.5,
  });
  expect(preview.zones[1]!.notGood).toBe(1);
  expect(preview.missing.join(' ')).toContain(
    'No output column on any zone: slow drift can only be seen in cold soaks',
  );
  const text = previewText(preview);
  for (const part of ['semicolon', 'line 53', 'M1 Front jaw', 'Humidity', 'What is missing'])
    expect(text).toContain(part);
});

test('the plant.yaml it writes is valid and reads the same log to the same zones', async () => {
  await inFolder({ 'log.csv': log }, async (folder) => {
    const { plantText, zones } = await lookAt([folder], {});
    const plant = parsePlantFile(plantText, 'plant.yaml');
    expect(plant.zones.map((zone) => zone.name)).toEqual(zones.map((zone) => zone.zone));
    const { writeFileSync } = await import('node:fs');
    writeFileSync(`${folder}/plant.yaml`, plantText);
    const again = await pourPaths([folder]);
    expect(again.zones.map((zone) => zone.name)).toEqual(zones.map((zone) => zone.zone));
    expect(again.found.problems).toEqual([]);
  });
});

test('control characters in names do not reach the terminal', async () => {
  const evil = log.replace('Humidity', 'Hum\u001b[2Jidity');
  const preview = await inFolder({ 'log.csv': evil }, (folder) => lookAt([folder], {}));
  expect(previewText(preview)).not.toContain('\u001b');
});

test.each([60, 80, 120])('no line is wider than %i columns', async (width) => {
  const preview = await inFolder({ 'a.csv': log, 'b.csv': log }, (folder) => lookAt([folder], {}));
  for (const line of previewText(preview, width).split('\n')) expect(textWidth(line), line).toBeLessThanOrEqual(width);
});

test('files taken for the same are told once, and the counts fit on one line', async () => {
  const later = log.replaceAll('2026-09-13', '2026-09-14');
  const preview = await inFolder({ 'a.csv': log, 'b.csv': later }, (folder) => lookAt([folder], {}));
  expect(previewText(preview)).toMatch(/a\.csv and 1 more like it/);
  expect(previewText(preview).match(/taken for/g)).toHaveLength(1);
  expect(
    previewLine({ ...preview, files: preview.files.slice(0, 1), zones: preview.zones.slice(0, 1), problems: [] }),
  ).toMatch(/^1 file, 1 zone, \d+ rows read, \d+ left out, 0 problems\n$/);
  expect(previewLine(preview)).toMatch(/^2 files, 2 zones, 118 rows read, 2 left out, \d+ problems\n$/);
});

const controlled = (setpoint: (i: number) => string): string =>
  `Time,Bar A PV,Bar A SP,Bar A OUT,Bar B PV,Bar B SP,Bar B OUT\n${Array.from(
    { length: 300 },
    (_, i) => `${time(i)},${21 + (i % 7) / 10},${setpoint(i)},0,${22 + (i % 5) / 10},180,1`,
  ).join('\n')}\n`;

test('a set point column without a number counts as none, and the preview says which', async () => {
  const preview = await inFolder({ 'bars.csv': controlled(() => '') }, (folder) => lookAt([folder], {}));
  expect(preview.missing).toContain(
    'No set point column for Bar A (column "Bar A SP" holds no numbers): heat-up times and deviations cannot be compared with what was asked for.',
  );
  const late = await inFolder({ 'bars.csv': controlled((i) => (i === 299 ? '180' : '')) }, (folder) =>
    lookAt([folder], {}),
  );
  expect(late.missing.join(' ')).not.toContain('set point');
});

test('rows that alarm and maintenance lists leave out are shown as those of temperature logs', async () => {
  const alarms = `Time;Zone;Message;State\n${Array.from({ length: 20 }, (_, i) => `${i === 7 ? 'yesterday' : time(i)};Front jaw;Sensor break;${i % 2 ? 'cleared' : 'active'}`).join('\n')}\n`;
  const work =
    'Date,Zone,Work done\n2026-09-14,Front jaw,sensor replaced\n2026-09-15,Rear jaw,cable replaced\n2026-09-16,Rear jaw,checked\nsoon,Rear jaw,terminal tightened\n';
  const files = { 'log.csv': log, 'alarms.csv': alarms, 'maintenance.csv': work };
  const preview = await inFolder(files, (folder) => lookAt([folder], {}));
  const of = (name: string) => preview.files.find(({ file }) => file.endsWith(name))!;
  expect(of('alarms.csv')).toMatchObject({ kind: 'alarm', rowsRead: 19, rowsRejected: 1 });
  expect(of('alarms.csv').examples).toMatchObject([{ line: 9, text: 'yesterday;Front jaw;Sensor break;cleared' }]);
  expect(of('maintenance.csv')).toMatchObject({ kind: 'maintenance', rowsRead: 3, rowsRejected: 1 });
  expect(of('maintenance.csv').examples).toMatchObject([{ line: 5, text: 'soon,Rear jaw,terminal tightened' }]);
  expect(previewText(preview)).toMatch(/line 9: .*: "yesterday;Front jaw/);
});

test('what is told with its file is not told again among the problems', async () => {
  const files = { 'log.csv': log, 'empty.csv': '', 'readme.txt': 'Licence\nfree text\n' };
  const preview = await inFolder(files, (folder) => lookAt([folder], {}));
  expect(preview.problems.map(({ code }) => code)).toEqual(expect.arrayContaining(['empty-file', 'bad-row']));
  const text = previewText(preview, 1000);
  const problems = text.slice(text.indexOf('Problems:'));
  expect(text.match(/The file is empty/g)).toHaveLength(1);
  expect(text).toMatch(/empty\.csv: The file is empty\. Check the export/);
  expect(text).toMatch(/readme\.txt: no rows with at least two cells/);
  expect(text.includes('Problems:') && /time cannot be read/.test(problems)).toBe(false);
});

test('a sensor type that no table knows is told', async () => {
  const plant = 'zones:\n  - name: M1 Front jaw\n    sensor: pt99\n  - name: M1 Rear jaw\n    sensor: pt100\n';
  const preview = await inFolder({ 'log.csv': log, 'plant.yaml': plant }, (folder) => lookAt([folder], {}));
  const told = preview.problems.filter(({ code }) => code === 'bad-plant-file').map(({ what }) => what);
  expect(told).toEqual([expect.stringMatching(/"M1 Front jaw" is a pt99/)]);
});

test('a sheet with two tables is shown as both, and neither list is missing', async () => {
  const book =
    'Date,From,To,Reason\n2026-09-13,06:30,06:50,Zone 1 cold\n2026-09-13,12:00,12:30,Lunch\n\nWork\nDate,Zone,Work done\n2026-09-13 07:00,M1 Front jaw,RTD replaced\n2026-09-13 08:00,M1 Rear jaw,terminal tightened\n';
  const preview = await inFolder({ 'log.csv': log, 'book.csv': book }, (folder) => lookAt([folder], {}));
  expect(preview.files.slice(1).map(({ kind, rowsRead }) => [kind, rowsRead])).toEqual([
    ['stops', 2],
    ['maintenance', 2],
  ]);
  expect(preview.missing.join()).not.toContain('No maintenance list');
});
