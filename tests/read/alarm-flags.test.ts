import { describe, expect, test } from 'vitest';
import { gather } from '../../src/gather.js';
import type { AlarmList } from '../../src/model/alarm-list.js';
import { inFolder, pourFiles } from './poured.js';

const startMs = Date.UTC(2026, 4, 4, 6);
const stepMs = 10_000;
const rowCount = 400;
/** Rows in which the alarm of the zone stands, from and to; the second is shorter than three rows. */
const standing = [
  [100, 120],
  [200, 202],
] as const;

const timeText = (row: number): string => new Date(startMs + row * stepMs).toISOString().slice(0, 19).replace('T', ' ');
const isUp = (row: number): boolean => standing.some(([from, to]) => row >= from && row < to);
const degC = (row: number, zone: number): string => (180 + 10 * zone + Math.sin(row / 9 + zone)).toFixed(1);

interface Flag {
  readonly name: string;
  readonly cell: (row: number) => string;
}

/** Two zones, the flags behind them. */
function logOf(flags: readonly Flag[], rows = { from: 0, to: rowCount }): string {
  const lines = [`Time,Zone 1 PV,Zone 2 PV,${flags.map(({ name }) => name).join(',')}`];
  for (let row = rows.from; row < rows.to; row++)
    lines.push([timeText(row), degC(row, 1), degC(row, 2), ...flags.map(({ cell }) => cell(row))].join(','));
  return `${lines.join('\n')}\n`;
}

const spansOf = (alarms: AlarmList): unknown[] =>
  [...alarms].map((it) => [it.zone, it.kind, (it.startMs - startMs) / stepMs, (it.endMs - startMs) / stepMs]);
const both = (zone: number, kind: string): unknown[] => standing.map(([from, to]) => [zone, kind, from, to]);

describe('a flag beside the readings gives alarms of its zone, with the class that its name says', () => {
  // Names as controllers and panels write them; common practice.
  test.each([
    ['Zone 1 Alarm', 'other'],
    ['Z1 Break', 'sensor-open'],
    ['Z1_SensorBreak', 'sensor-open'],
    ['Z1 HiAlm', 'temperature-high'],
    ['Z1_HH', 'temperature-high'],
    ['Zone 1 Lo Alarm', 'temperature-low'],
    ['ALM_LO_Z1', 'temperature-low'],
    ['Zone1.bHeaterFault', 'heater'],
    ['Zone 1 Fault', 'other'], // of the heater as well as of the sensor
    ['Zone 1 Sensor Fault', 'sensor-fault'],
    ['Z1_ProbeErr', 'sensor-fault'],
    ['Zone 1 Fühlerbruch', 'sensor-open'],
  ])('%s', async (name, kind) => {
    const { found, result } = await pourFiles({ 'log.csv': logOf([{ name, cell: (row) => (isUp(row) ? '1' : '0') }]) });
    expect(found.zones).toHaveLength(2);
    expect(spansOf(result.flagAlarms)).toEqual(both(0, kind));
  });
});

describe('cells say it in numbers and words', () => {
  test.each([
    ['TRUE', 'FALSE', 'other'],
    ['on', 'off', 'other'],
    ['4', '0', 'other'],
    ['ALARM', 'OK', 'other'],
    ['HIGH', 'normal', 'temperature-high'],
    ['sensor break', '', 'sensor-open'],
    ['Ein', 'Aus', 'other'],
  ])('%s and %s', async (up, rest, kind) => {
    const files = { 'log.csv': logOf([{ name: 'Zone 2 Alarm', cell: (row) => (isUp(row) ? up : rest) }]) };
    const fast = await pourFiles(files);
    const slow = await pourFiles(files, {}, { isFast: false });
    expect(spansOf(fast.result.flagAlarms)).toEqual(both(1, kind));
    expect(spansOf(slow.result.flagAlarms)).toEqual(both(1, kind));
  });

  test('a column that is blank in all rows that were looked at is read all the same', async () => {
    const cell = (row: number): string => (row >= 7000 && row < 7005 ? 'LOW' : '');
    const { result } = await pourFiles({ 'log.csv': logOf([{ name: 'Zone 1 Alarm', cell }], { from: 0, to: 40_000 }) });
    expect(spansOf(result.flagAlarms)).toEqual([[0, 'temperature-low', 7000, 7005]]);
  });
});

test('tags of a long log are flags, too', async () => {
  const lines = ['Time;Tag;Value'];
  for (let row = 0; row < rowCount; row++)
    lines.push(
      `${timeText(row)};Z1.PV;${degC(row, 1)}`,
      `${timeText(row)};Z1.HighAlarm;${isUp(row) ? 'True' : 'False'}`,
    );
  const { result } = await pourFiles({ 'log.csv': `${lines.join('\n')}\n` });
  expect(spansOf(result.flagAlarms)).toEqual(both(0, 'temperature-high'));
});

test('a file of flags alone is read beside the file with the readings', async () => {
  const bits = ['Time,Zone 1 Alarm,Zone 2 Alarm'];
  for (let row = 0; row < rowCount; row++) bits.push(`${timeText(row)},FALSE,${isUp(row) ? 'TRUE' : 'FALSE'}`);
  const { found, result } = await pourFiles({
    'temperatures.csv': logOf([]).replaceAll(/,$/gm, ''),
    'bits.csv': `${bits.join('\n')}\n`,
  });
  expect(found.files.map(({ kind }) => kind)).toEqual(['temperature', 'temperature']);
  expect(spansOf(result.flagAlarms)).toEqual(both(1, 'other'));
});

test('an alarm goes on into the file of the next day, begins in the first row and has no end in the last', async () => {
  const up = (row: number): boolean => row < 5 || (row >= 150 && row < 260) || row >= 390;
  const flag = { name: 'Zone 1 Alarm', cell: (row: number) => (up(row) ? '1' : '0') };
  const { result } = await pourFiles({
    'a.csv': logOf([flag], { from: 0, to: 200 }),
    'b.csv': logOf([flag], { from: 200, to: rowCount }),
  });
  expect(spansOf(result.flagAlarms)).toEqual([
    [0, 'other', 0, 5],
    [0, 'other', 150, 260],
    [0, 'other', 390, NaN],
  ]);
});

test.each([
  ['in every row', () => '1'],
  ['from soon after the beginning to the end', (row: number) => (row < 50 ? '0' : '1')],
])('a flag that is up %s gives no alarm, and this is said', async (_, cell) => {
  const { result } = await pourFiles({ 'log.csv': logOf([{ name: 'Zone 1 Break', cell }]) });
  expect(result.flagAlarms).toHaveLength(0);
  expect(result.assumptions.join()).toContain('"Zone 1 Break"');
});

describe('no flags are', () => {
  test.each([
    ['limits', 'Zone 1 Alarm High', () => '215'],
    ['limits that are nought', 'Zone 1 Alarm Limit', () => '0'],
    [
      'labels of somebody who looked at the log later',
      'Fault detection ground truth',
      (row: number) => (isUp(row) ? '1' : '0'),
    ],
    ['states that stand while there is no alarm', 'Zone 1 Alarm OK', (row: number) => (isUp(row) ? '0' : '1')],
    ['relays, which may be closed at rest', 'Zone 1 Alarm relay', (row: number) => (isUp(row) ? '0' : '1')],
    ['counts', 'Zone 1 alarm count', (row: number) => String(Math.floor(row / 100))],
    ['flags that name no zone of several', 'Alarm', (row: number) => (isUp(row) ? '1' : '0')],
  ])('%s', async (_, name, cell) => {
    const { found, result } = await pourFiles({ 'log.csv': logOf([{ name, cell }]) });
    expect(found.files[0]!.columns.find((column) => column.name === name)?.role).toBe('ignored');
    expect(result.flagAlarms).toHaveLength(0);
  });
});

describe('plant.yaml', () => {
  const cell = (row: number): string => (isUp(row) ? '1' : '0');

  test('says which columns are flags, of which zone and of what kind', async () => {
    const plant = 'alarmColumns:\n  - column: DI_17\n    zone: Zone 2\n    kind: heater\n';
    const { result } = await pourFiles({ 'log.csv': logOf([{ name: 'DI_17', cell }]), 'plant.yaml': plant });
    expect(spansOf(result.flagAlarms)).toEqual(both(1, 'heater'));
  });

  test('leaves columns out', async () => {
    const log = logOf([{ name: 'Zone 1 Alarm', cell }]);
    const { result } = await pourFiles({ 'log.csv': log, 'plant.yaml': 'leaveOut: [Zone 1 Alarm]\n' });
    expect(result.flagAlarms).toHaveLength(0);
  });
});

describe('beside an alarm list', () => {
  const log = logOf([
    { name: 'Zone 1 Alarm', cell: (row) => (isUp(row) ? '1' : '0') },
    { name: 'Zone 2 High Alarm', cell: (row) => (row >= 300 && row < 310 ? '1' : '0') },
  ]);
  const listed = standing.flatMap(([from, to]) => [
    `${timeText(from - 0.5)},Zone 1,Sensor break,Active`,
    `${timeText(to - 0.5)},Zone 1,Sensor break,Cleared`,
  ]);

  test('the same alarm counts once, another one as well', async () => {
    const list = `Time,Source,Message,State\n${listed.join('\n')}\n`;
    const { evidence } = await inFolder({ 'log.csv': log, 'alarms.csv': list }, (folder) => gather([folder], {}));
    expect([...evidence.alarms].map(({ zone, kind }) => [zone, kind])).toEqual([
      [0, 'sensor-open'],
      [0, 'sensor-open'],
      [1, 'temperature-high'],
    ]);
  });

  test('a list of another zone takes nothing away', async () => {
    const list = `Time,Source,Message,State\n${listed.join('\n').replaceAll('Zone 1', 'Zone 2')}\n`;
    const { evidence } = await inFolder({ 'log.csv': log, 'alarms.csv': list }, (folder) => gather([folder], {}));
    expect([...evidence.alarms].filter(({ zone }) => zone === 0)).toHaveLength(2);
  });
});

test('alarms that stand in the log itself are on its clock', async () => {
  const log = logOf([{ name: 'Zone 1 Break', cell: (row) => (isUp(row) ? '1' : '0') }]);
  const { clockShiftSeconds } = await inFolder({ 'log.csv': log }, (folder) => gather([folder], {}));
  expect(clockShiftSeconds).toBe(0);
});
