import { describe, expect, test } from 'vitest';
import { alarmFindings } from '../../src/alarms/alarm-findings.js';
import { chatterOf, floodsOf } from '../../src/alarms/floods.js';
import { alarmDefaults } from '../../src/alarms/thresholds.js';
import { AlarmList } from '../../src/model/alarm-list.js';
import type { AlarmSpan } from '../../src/model/alarm.js';
import { makeZone } from '../make/blocks.js';

const zone = (index: number, name: string) => makeZone({ index, name, samplingMs: 10_000 });
const span = (startMs: number, endMs: number, more: Partial<AlarmSpan> = {}): AlarmSpan => ({
  startMs,
  endMs,
  acknowledgedMs: NaN,
  source: 'Zone 1',
  message: 'sensor open circuit',
  kind: 'sensor-open',
  zone: 0,
  machine: 'M1',
  priority: '1',
  ...more,
});
const day = 86_400_000;
const lasting = (zone: number) => ({ zone, fromMs: NaN, toMs: NaN });
const findings = (alarms: AlarmSpan[], more = {}) =>
  alarmFindings({
    alarms: AlarmList.of(alarms),
    hasLog: true,
    zones: [zone(0, 'Zone 1'), zone(1, 'Zone 2')],
    window: { start: 0, end: day },
    faultyZones: [],
    opensByZone: [[], []],
    plant: { zones: [] },
    clockShiftSeconds: null,
    clockShiftsByMachine: [],
    ...more,
  });

describe('worked counts (arithmetic on the definitions in measures.md)', () => {
  test('one alarm every 10 minutes for 24 h is 144 a day and 1 per 10 min', () => {
    const alarms = Array.from({ length: 144 }, (_, i) => span(i * 600_000, i * 600_000 + 5000));
    const found = findings(alarms);
    expect([found.activations, found.perDayMean, found.perHourMean, found.perTenMinutesMean]).toEqual([144, 144, 6, 1]);
    expect(found.perTenMinutesPeak).toBe(1);
    expect(found.floods).toEqual([]);
  });
  test('0, 15, 35 s chatters; 0, 25, 61 s does not', () => {
    expect(chatterOf([0, 15_000, 35_000], alarmDefaults)).toBe(3);
    expect(chatterOf([0, 25_000, 61_000], alarmDefaults)).toBe(0);
  });
});

describe('floods (ISA-18.2: more than 10 in 10 min until fewer than 5 in 10 min)', () => {
  test('ten in ten minutes is none, eleven is one', () => {
    const every = (count: number) => Array.from({ length: count }, (_, i) => i * 10_000);
    expect(floodsOf(every(10), alarmDefaults)).toEqual([]);
    const [flood] = floodsOf(every(11), alarmDefaults);
    // alarms at 0 … 100 s: fewer than 5 are left when the seventh (60 s) is ten minutes old
    expect(flood).toEqual({ startMs: 0, endMs: 660_000, count: 11, peakPerTenMinutes: 11 });
  });
  test('two floods hours apart stay two', () => {
    const burst = (from: number) => Array.from({ length: 12 }, (_, i) => from + i * 1000);
    expect(floodsOf([...burst(0), ...burst(4 * 3_600_000)], alarmDefaults).map(({ count }) => count)).toEqual([12, 12]);
  });
});

test('stale, fleeting, standing and acknowledged', () => {
  const found = findings(
    [
      span(0, NaN, { source: 'Zone 2', zone: 1 }),
      span(1000, 5000, { acknowledgedMs: 3000 }),
      span(3_600_000, 3_700_000, { message: 'high' }),
    ],
    { window: { start: 0, end: 2 * day } },
  );
  expect(found.stale).toEqual([
    { name: 'Zone 2: sensor open circuit', since: '1970-01-01T00:00:00.000Z', hours: 48, isActive: true },
  ]);
  expect(found.fleeting.map(({ name, count }) => [name, count])).toEqual([['Zone 1: sensor open circuit', 1]]);
  expect(found.medianSecondsToAcknowledge).toBe(2);
  expect(found.medianSecondsToClear).toBe(52);
  expect(found.byZone.find(({ name }) => name === 'Zone 2')?.minutesInAlarm).toBe(2 * 1440);
});

test('what repairs remove adds up from the most talkative zone on', () => {
  const alarms = [
    ...Array.from({ length: 6 }, (_, i) => span((i * day) / 10, (i * day) / 10 + 1, { zone: 1 })),
    ...Array.from({ length: 3 }, (_, i) => span((i * day) / 10, (i * day) / 10 + 1)),
    span(5, 6, { zone: null, kind: 'machine-stop' }),
  ];
  expect(findings(alarms, { faultyZones: [0, 1].map(lasting) }).removable).toEqual([
    { zone: 'Zone 2', machine: 'M1', count: 6, cumulativeShare: 0.6 },
    { zone: 'Zone 1', machine: 'M1', count: 3, cumulativeShare: 0.9 },
  ]);
});

test('no repair removes what a good sensor would alarm, too: before the fault, after it, or with the machine', () => {
  const zones = [0, 1, 2].map((index) => zone(index, `Zone ${index + 1}`));
  const cold = (startMs: number, index = 0) =>
    span(startMs, startMs + 60_000, { zone: index, kind: 'temperature-low', message: 'too cold' });
  const minute = 60_000;
  const alarms = [
    cold(100 * minute), // before the fault
    cold(200 * minute), // alone, in the fault
    cold(300 * minute),
    cold(303 * minute, 1), // half of the two others follow: a start
    cold(400 * minute),
    cold(406 * minute, 1), // too late to be one event
    cold(500 * minute), // after the repair
    span(600 * minute, 600 * minute + 5000), // an input alarm is the input's at any time
  ];
  const faultyZones = [{ zone: 0, fromMs: 150 * minute, toMs: 450 * minute }];
  expect(findings(alarms, { zones, faultyZones }).removable).toEqual([
    { zone: 'Zone 1', machine: 'M1', count: 3, cumulativeShare: 3 / 8 },
  ]);
});

test('shares of priorities are of the alarms that carry one', () => {
  const alarms = [
    span(0, 1),
    span(1000, 1001),
    span(2000, 2001, { priority: '2' }),
    span(3000, 3001, { priority: null }),
  ];
  expect(findings(alarms).byPriority.map(({ name, share }) => [name, share])).toEqual([
    ['1', 2 / 3],
    ['2', 1 / 3],
  ]);
});

test('two machines with a zone of one name are two rows everywhere, each with its machine', () => {
  const zones = [zone(0, 'Zone 1'), { ...zone(1, 'Zone 1'), machine: 'M2' }];
  const at = (start: number, index: number) => span(start, start + 300_000, { zone: index, machine: `M${index + 1}` });
  const alarms = [at(0, 0), at(1_000_000, 1), at(2_000_000, 1)];
  const found = findings(alarms, { zones, faultyZones: [0, 1].map(lasting) });
  expect(found.byZone.map(({ name, machine, count }) => [name, machine, count])).toEqual([
    ['Zone 1', 'M2', 2],
    ['Zone 1', 'M1', 1],
  ]);
  expect(found.removable.map(({ zone: name, machine, count }) => [name, machine, count])).toEqual([
    ['Zone 1', 'M2', 2],
    ['Zone 1', 'M1', 1],
  ]);
  expect(found.contradictions.map(({ machine, says }) => [machine, says])).toEqual([
    ['M1', '1 input alarm of Zone 1 on M1 has no sign in its readings.'],
    ['M2', '2 input alarms of Zone 1 on M2 have no sign in its readings.'],
  ]);
});

test('contradictions go both ways', () => {
  const opensByZone = [[], [{ start: 1_000_000, end: 1_060_000 }]];
  const found = findings([span(0, 300_000)], { opensByZone });
  expect(found.contradictions.map(({ zone, what, count }) => [zone, what, count])).toEqual([
    ['Zone 1', 'alarm-without-sign', 1],
    ['Zone 2', 'sign-without-alarm', 1],
  ]);
});

test('no alarms give zeros, not NaN', () => {
  const found = findings([], { hasLog: false });
  expect([found.activations, found.perHourMean, found.perTenMinutesPeak, found.shareOfTimeInFlood]).toEqual([
    0, 0, 0, 0,
  ]);
  expect(found.medianSecondsToClear).toBeNull();
});

test('time in alarm and stale alarms end with the log; one that came before the log and stands in it is stale', () => {
  const found = findings([
    span(-2 * day, NaN, { message: 'before' }),
    span(-3 * day, -2 * day, { message: 'long gone' }),
    span(day / 2, 400 * day, { message: 'beyond' }),
  ]);
  expect(found.activations).toBe(1);
  expect(found.mostFrequent.map(({ name, minutesInAlarm }) => [name, minutesInAlarm])).toEqual([
    ['Zone 1: beyond', 12 * 60],
  ]);
  expect(found.stale).toEqual([
    { name: 'Zone 1: before', since: '1969-12-30T00:00:00.000Z', hours: 72, isActive: true },
  ]);
});
