import { expect, test } from 'vitest';
import { lookAt } from '../../src/commands/preview-facts.js';
import { previewLine, previewText } from '../../src/commands/preview-text.js';
import { parsePlantFile } from '../../src/read/plant-text.js';
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
  expect(previewLine(preview)).toMatch(/^2 files, 2 zones, 118 rows read, 2 left out, \d+ problems\n$/);
});
