import { describe, expect, test } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { pourFiles, type PouredZone } from './poured.js';

interface Row {
  readonly temperature: number;
  readonly humidity: number;
  readonly gas: number;
  readonly pressure: number;
}

const lively = (i: number): Row => ({
  temperature: 20 + 5 * Math.sin(i / 9),
  humidity: 50 + 20 * Math.sin(i / 7),
  gas: 3 + Math.sin(i / 5),
  pressure: 500 + 100 * Math.sin(i / 11),
});
const nothing: Row = { temperature: -200, humidity: -200, gas: -200, pressure: -200 };

async function stationOf(row: (i: number) => Row, isFast = true): Promise<PouredZone> {
  const lines = Array.from({ length: 300 }, (_, i) => {
    const { temperature, humidity, gas, pressure } = row(i);
    const time = new Date(Date.UTC(2026, 2, 2) + i * 60_000).toISOString();
    return [time, ...[temperature, humidity, gas, pressure].map((value) => value.toFixed(1))].join(',');
  });
  const text = ['time,Temperature,Humidity,Gas,Pressure', ...lines, ''].join('\n');
  const { zones } = await pourFiles({ 'station.csv': text }, {}, { isFast });
  expect(zones).toHaveLength(1);
  return zones[0]!;
}
const statesOf = (zone: PouredZone, state: number): number[] => zone.state.flatMap((s, i) => (s === state ? [i] : []));

describe('a number in columns of all kinds at once', () => {
  const isOut = (i: number) => i >= 100 && i < 140;
  test('stands for no value, read fast or slowly', async () => {
    const rows = (i: number) => (isOut(i) ? nothing : lively(i));
    const zone = await stationOf(rows);
    expect(statesOf(zone, readingState.noValue)).toEqual(Array.from({ length: 40 }, (_, i) => 100 + i));
    expect((await stationOf(rows, false)).state).toEqual(zone.state);
  });
  test('stays a code of the input where the temperature alone shows it', async () => {
    const zone = await stationOf((i) => {
      if (i >= 200 && i < 210) return { ...lively(i), temperature: -200 };
      return isOut(i) ? nothing : lively(i);
    });
    expect(statesOf(zone, readingState.belowScale)).toEqual(Array.from({ length: 10 }, (_, i) => 200 + i));
    expect(statesOf(zone, readingState.noValue)).toHaveLength(40);
  });
  test('is no such number where only temperatures show it', async () => {
    const lines = Array.from({ length: 300 }, (_, i) => {
      const value = isOut(i) ? '3276.7' : (180 + Math.sin(i)).toFixed(1);
      return `${new Date(Date.UTC(2026, 2, 2) + i * 60_000).toISOString()},${value},${value},180,${40 + (i % 7)}`;
    });
    const text = ['time,Left PV,Right PV,Left SP,Left OUT', ...lines, ''].join('\n');
    const { zones } = await pourFiles({ 'bars.csv': text });
    for (const zone of zones) expect(statesOf(zone, readingState.aboveScale)).toHaveLength(40);
  });
  test('takes set point and output with it', async () => {
    const lines = Array.from({ length: 300 }, (_, i) => {
      const cells = isOut(i)
        ? Array.from({ length: 6 }, () => '-9999')
        : [180 + (i % 3), 180, 40 + (i % 7), 175, 180, 30 + (i % 5)];
      return `${new Date(Date.UTC(2026, 2, 2) + i * 60_000).toISOString()},${cells.join(',')}`;
    });
    const text = ['time,Left PV,Left SP,Left OUT,Right PV,Right SP,Right OUT', ...lines, ''].join('\n');
    const [left] = (await pourFiles({ 'bars.csv': text })).zones;
    expect(statesOf(left!, readingState.noValue)).toHaveLength(40);
    expect(left!.setpointDegC[120]).toBeNaN();
    expect(left!.outputPercent[120]).toBeNaN();
  });
  test('a word in place of reading, set point and output is of the recording; alone it may be the input', async () => {
    const lines = Array.from({ length: 300 }, (_, i) => {
      const left = i === 120 ? ['NaN', 'NaN', 'NaN'] : [180 + (i % 3), 180, 40 + (i % 7)];
      const right = i === 200 ? ['NaN', 180, 30] : [175 + (i % 4), 180, 30 + (i % 5)];
      return `${new Date(Date.UTC(2026, 2, 2) + i * 60_000).toISOString()},${[...left, ...right].join(',')}`;
    });
    const text = ['time,Left PV,Left SP,Left OUT,Right PV,Right SP,Right OUT', ...lines, ''].join('\n');
    const [left, right] = (await pourFiles({ 'bars.csv': text })).zones;
    expect(statesOf(left!, readingState.blank)).toHaveLength(1);
    expect(statesOf(left!, readingState.otherText)).toHaveLength(0);
    expect(statesOf(right!, readingState.otherText)).toHaveLength(1);
  });
});
