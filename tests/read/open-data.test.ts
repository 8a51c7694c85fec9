import { describe, expect, test } from 'vitest';
import { readingState } from '../../src/model/sample-block.js';
import { sharedData } from '../make/shared-data.js';
import { pourPaths, type Poured } from './poured.js';

// Counts below were made on the published files themselves; each source is named with its set.
function withData(name: string, check: (poured: Poured) => void, options = {}): void {
  const path = sharedData(`open/${name}`);
  if (path === undefined) test.skip(`${name} (not on this machine)`, () => undefined);
  else test(name, async () => check(await pourPaths([path], options)));
}
const iso = (ms: number | undefined): string => new Date(ms ?? NaN).toISOString();
const count = <T>(values: readonly T[], is: (value: T) => boolean): number => values.filter(is).length;

describe('open data', () => {
  // Numenta Anomaly Benchmark, Lavin and Ahmad 2015.
  withData('nab/machine_temperature_system_failure.csv', ({ zones, result }) => {
    expect(result.sources[0]).toMatchObject({ rowsRead: 22_695, rejectedByReason: { repeated: 12 } });
    expect(result.problems.find((problem) => problem.code === 'clock-jump')).toMatchObject({ line: 10_151, count: 1 });
    expect([iso(zones[0]!.timeMs[0]), iso(zones[0]!.timeMs.at(-1))]).toEqual([
      '2013-12-02T21:15:00.000Z',
      '2014-02-19T15:25:00.000Z',
    ]);
  });
  // Air Quality, De Vito et al., UCI Machine Learning Repository: -200 marks 366 missing temperatures.
  withData('uci-air-quality', ({ zones, result }) => {
    const [zone] = zones;
    expect(zones).toHaveLength(1);
    expect(result.sources[0]).toMatchObject({ rowsRead: 9357, rejectedByReason: { 'blank-row': 114 } });
    expect([iso(zone!.timeMs[0]), iso(zone!.timeMs.at(-1))]).toEqual([
      '2004-03-10T18:00:00.000Z',
      '2005-04-04T14:00:00.000Z',
    ]);
    expect(count(zone!.state, (state) => state === readingState.noValue)).toBe(366); // in all columns at once
    const good = zone!.readingDegC.filter((_, i) => zone!.state[i] === readingState.good);
    expect([Math.min(...good), Math.max(...good)]).toEqual([-1.9, 44.6]);
    expect(good.reduce((sum, degC) => sum + degC, 0) / good.length).toBeCloseTo(18.3178, 4);
  });
  // SensorScope, Grand St Bernard station 17; de Bruijn et al., SENSORNETS 2016.
  const names =
    'Station,Year,Month,Day,Hour,Minute,Second,Epoch,Ambient PV,Surface PV,Solar,Humidity,Moisture,Watermark,Rain,Wind,Direction';
  withData(
    'sensorscope-raw/stbernard-meteo-17.txt',
    ({ zones, result }) => {
      const ambient = zones.find((zone) => zone.name === 'Ambient')!;
      expect(zones.map((zone) => zone.name)).toEqual(['Ambient', 'Surface']);
      expect(result.sources[0]).toMatchObject({ rowsRead: 24_261, rowsRejected: 0 });
      expect([iso(ambient.timeMs[0]), iso(ambient.timeMs.at(-1))]).toEqual([
        '2007-09-20T18:50:51.000Z',
        '2007-10-25T21:59:25.000Z',
      ]);
      expect(count(ambient.readingDegC, (degC) => degC === -1)).toBe(5714);
      expect(count(ambient.readingDegC, (degC) => degC < -30)).toBe(34);
      expect(count(ambient.state, (state) => state === readingState.otherText)).toBe(24);
      expect(count(ambient.state, (state) => state === readingState.good)).toBe(24_261 - 24); // the stuck -1.0 stays a reading
    },
    { names: names.split(',') },
  );
  // Nieto, Aguilera, Lopez-de-Ipina, Sensors 2021, 21(18), 6063.
  withData('arduino-room', ({ zones, found, result }) => {
    expect(zones).toHaveLength(1);
    expect(result.sources[0]).toMatchObject({ rowsRead: 4759, rowsRejected: 0 });
    expect([Math.min(...zones[0]!.readingDegC), Math.max(...zones[0]!.readingDegC)]).toEqual([25.4, 31.9]);
    expect(found.files[0]!.columns.find((column) => column.name === 'tempF')!.why).toContain('repeats "tempC"');
    expect(iso(zones[0]!.timeMs[0])).toBe('2021-08-16T19:58:30.000Z');
  });
  // Skoltech Anomaly Benchmark, Katser and Kozitsin.
  withData('skab/valve1_0.csv', ({ zones, result }) => {
    expect(zones).toHaveLength(2);
    expect(result.sources[0]).toMatchObject({ rowsRead: 1147, rowsRejected: 0 });
  });
  // Granderson et al., Scientific Data 2020: °F, month first.
  withData('lbnl-ahu', ({ zones, found }) => {
    expect(zones.map((zone) => zone.name)).toEqual([
      'AHU: Supply Air',
      'AHU: Outdoor Air',
      'AHU: Mixed Air',
      'AHU: Return Air',
    ]);
    expect(zones[0]!.timeMs).toHaveLength(21_600);
    expect(found.files[0]!.columns.find((column) => column.role === 'reading')!.unit).toBe('degF');
    expect([iso(zones[0]!.timeMs[0]), iso(zones[0]!.timeMs.at(-1))]).toEqual([
      '2017-03-11T00:00:00.000Z',
      '2017-04-01T23:59:00.000Z',
    ]);
  });
  // de Bruijn et al., SENSORNETS 2016: single quotes, and double quotes with an offset.
  withData('santander-fault-benchmark/santander163_clean.txt', ({ zones, result }) => {
    expect(zones.map((zone) => zone.name)).toEqual(['santander163']);
    expect(result.sources[0]).toMatchObject({ rowsRead: 1986, rowsRejected: 0 });
    expect([Math.min(...zones[0]!.readingDegC), Math.max(...zones[0]!.readingDegC)]).toEqual([13.22, 28.38]);
  });
  withData('santander-fault-benchmark/santander163_raw.txt', ({ zones }) =>
    expect(iso(zones[0]!.timeMs[0])).toBe('2015-07-26T22:02:28.000Z'),
  );
  // Otiato, temperature control of a cooking pot: workbooks, seconds since the start.
  withData('cooking-pot/Without_Lid_0cm_a.xlsx', ({ zones, result }) => {
    expect(result.sources.map((source) => source.rowsRead).sort((a, b) => a - b)).toEqual([227, 354, 415, 493, 639]);
    const tenth = zones
      .filter((zone) => zone.name.endsWith('T10'))
      .map((zone) => Math.round(Math.max(...zone.readingDegC) * 10) / 10);
    expect(tenth.sort((a, b) => a - b)).toEqual([146.3, 148.1, 148.9, 148.9, 149.3]);
  });
  // Manca, Tennessee-Eastman-Process Alarm Management Dataset, 2020 (simulated): a list of alarms, not a log of readings.
  withData('tep-alarms', ({ found }) => expect(found.files.filter((file) => file.kind === 'alarm')).toHaveLength(3));
});
