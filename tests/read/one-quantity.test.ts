import { expect, test } from 'vitest';
import { conclude } from '../../src/pipeline.js';
import { gather } from '../../src/gather.js';
import { areOneQuantity } from '../../src/read/columns/one-quantity.js';
import { inFolder, pourFiles } from './poured.js';

const timeOf = (i: number): string => new Date(Date.UTC(2026, 2, 2) + i * 60_000).toISOString();
const textOf = (row: (i: number) => readonly number[]): string =>
  Array.from({ length: 400 }, (_, i) => `${timeOf(i)},${row(i).map((value) => value.toFixed(1))}\n`).join('');

/** Two zones that heat up from the hall, with no word above them. */
const heated = textOf((i) => [22 + Math.min(150, i), 21 + Math.min(120, 0.8 * i)]);
/** Temperature, humidity and wind direction of a weather station, with no word above them. */
const station = textOf((i) => [5 + Math.sin(i / 40), 70 + 10 * Math.sin(i / 30), (i * 7) % 360]);

test('takes columns that come to one hall for zones', async () => {
  const { found } = await pourFiles({ 'log.csv': heated });
  expect(found.zones.map((zone) => zone.isQuantityUnknown)).toEqual([undefined, undefined]);
});

test('claims no fault of columns that may be anything, and says so', async () => {
  const findings = await inFolder({ 'log.csv': station }, async (folder) => conclude(await gather([folder], {})));
  expect(findings.zones).toHaveLength(3);
  for (const zone of findings.zones) {
    expect(zone.status).toBe('insufficient-data');
    expect(zone.unable[0]!.why).toContain('nothing in the log says that its numbers are temperatures');
  }
  expect(findings.problems.map(({ what }) => what).join()).toContain('No name says which columns are temperatures');
  expect(findings.assumptions.join()).toContain('no fault is claimed');
});

test('judges them where their names are given', async () => {
  await inFolder({ 'log.csv': station }, async (folder) => {
    const { evidence } = await gather([folder], { names: ['Time', 'Air temperature', 'Humidity', 'Direction'] });
    expect(evidence.zones.map((zone) => zone.isQuantityUnknown)).toEqual([undefined]);
  });
});

test('takes zones that stay hot at different set points for one quantity', () => {
  const held = (degC: number) => ({ series: { value: [degC, degC + 0.3, degC - 0.2, degC] }, scale: 1 });
  expect(areOneQuantity([held(120), held(230)])).toBe(true);
  expect(areOneQuantity([held(20), held(230)])).toBe(false);
});
