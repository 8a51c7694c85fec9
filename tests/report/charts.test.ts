import { compile } from 'vega-lite';
import { describe, expect, test } from 'vitest';
import { plantCharts, zoneCharts } from '../../src/report/charts/index.js';
import type { Look } from '../../src/report/charts/look.js';
import { stripSpans } from '../../src/report/charts/strips.js';
import { tracePoints } from '../../src/report/charts/trace-points.js';
import { plantChartData, zoneChartData } from '../../src/report/embed/chart-data.js';
import { unpackPoints } from '../../src/report/embed/pack-lists.js';
import { clockOf } from '../../src/report/text/clock.js';
import { emptyFindings, hostileFindings, plantFindings } from '../make/report/findings.js';

const colours = {
  ink: 'black',
  faint: 'grey',
  paper: 'white',
  reading: 'blue',
  setpoint: 'black',
  fault: 'red',
  output: 'olive',
  running: 'grey',
  alarm: 'orange',
};
const look: Look = { unit: 'degC', widthPx: 800, ...colours };
const findings = plantFindings();
const clock = clockOf(findings.timezone);
const data = zoneChartData(findings.zones[0]!, findings, clock);

describe.each(['degC', 'degF'] as const)('in %s', (unit) => {
  test.each(Object.entries(zoneCharts))('chart %s compiles for every zone, hostile names too', (_name, make) => {
    for (const from of [findings, hostileFindings()]) {
      for (const zone of from.zones.slice(0, 4)) {
        expect(() => compile(make(zoneChartData(zone, from, clock), { ...look, unit }))).not.toThrow();
      }
    }
  });
});

test.each(Object.entries(plantCharts))('chart %s compiles, with nothing in it too', (_name, make) => {
  expect(() => compile(make(plantChartData(findings), look))).not.toThrow();
  expect(() => compile(make(plantChartData(emptyFindings()), look))).not.toThrow();
});

test('no chart names an address', () => {
  for (const make of Object.values(zoneCharts)) expect(JSON.stringify(make(data, look))).not.toMatch(/https?:|"url"/);
});

test('the trace keeps the highest and the lowest reading of the findings', () => {
  const { maxDegC, minDegC } = findings.zones[0]!.trace!;
  const points = tracePoints(data.trace!, look);
  expect(Math.max(...points.map(({ high }) => high ?? -Infinity))).toBeCloseTo(
    Math.max(...maxDegC.map((value) => value ?? -Infinity)),
    1,
  );
  expect(Math.min(...points.map(({ low }) => low ?? Infinity))).toBeCloseTo(
    Math.min(...minDegC.map((value) => value ?? Infinity)),
    1,
  );
});

test('°F shows the same trace on the other scale', () => {
  const celsius = tracePoints(data.trace!, look);
  const fahrenheit = tracePoints(data.trace!, { ...look, unit: 'degF' });
  expect(fahrenheit[700]!.high).toBeCloseTo(celsius[700]!.high! * 1.8 + 32, 1);
});

test('running, single faults, alarms and missing readings each have their stretches', () => {
  const spans = stripSpans(data, tracePoints(data.trace!, look));
  const counts = (what: string): number => spans.filter((span) => span.what === what).length;
  expect(counts('Fault')).toBe(findings.zones[0]!.faultMarks!.length);
  expect(counts('Alarm')).toBe(findings.zones[0]!.alarmMarks!.length);
  expect(counts('Running')).toBe(12 * 2); // 10 weekdays and 2 Saturdays, each split by the noon break
});

test('soaks of the weeks before stand before those of this log', () => {
  const drifting = findings.zones.find(({ zone }) => zone === 'Upper plate 3')!;
  const { soaks: packed, toleranceDegC } = zoneChartData(drifting, findings, clock);
  const soaks = unpackPoints(packed);
  expect(soaks.length).toBe(4 + 4);
  expect([...soaks].sort((a, b) => a.timeMs - b.timeMs)).toEqual(soaks);
  // IEC 60751 class B at 19.4 °C: 0.30 + 0.005 × 19.4.
  expect(toleranceDegC).toBeCloseTo(0.397, 3);
});
