import { expect, test } from 'vitest';
import { returningSteps } from '../../../src/detect/judges/returning-steps.js';
import { refreshStepsDegC } from '../../../src/detect/shared/readings/held-readings.js';
import { ask } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { evidenceOf, zoneLog, zoneOfLog } from '../../make/zone-log.js';

/** An air temperature over three days, asked for every quarter of an hour and logged every minute. */
function airLog(refreshMinutes: number, everyMinutes = 1): MadeSample[] {
  const at = (minute: number) =>
    18 + 6 * Math.sin((minute * 2 * Math.PI) / 1440) + Math.sin(minute / 37) * Math.sin(minute / 11);
  return Array.from({ length: 3 * 1440 }, (_, minute) => ({
    timeMs: Date.UTC(2026, 2, 2) + minute * 60_000,
    degC: Number(at(Math.floor(minute / refreshMinutes) * refreshMinutes).toFixed(2)),
  })).filter((_, minute) => minute % everyMinutes === 0);
}
const has = { reading: true, setpoint: false, output: false, running: false };
const zones = [zoneOfLog(0, { has, samplingMs: 60_000, resolutionDegC: 0.01 })];

test('knows a reading that is refreshed more slowly than it is logged', () => {
  const [held] = refreshStepsDegC(evidenceOf([airLog(15)], { zones }));
  expect(held!).toBeGreaterThan(0.3);
  expect(held!).toBeLessThan(2);
  expect(ask(returningSteps, evidenceOf([airLog(15)], { zones })).symptoms).toEqual([]);
});

test('knows it in a log with a reading every two minutes, too', () => {
  const slow = zones.map((zone) => ({ ...zone, samplingMs: 120_000 }));
  expect(refreshStepsDegC(evidenceOf([airLog(16, 2)], { zones: slow }))[0]).toBeGreaterThan(0.3);
  expect(refreshStepsDegC(evidenceOf([airLog(1, 2)], { zones: slow }))).toEqual([0]);
});

test('leaves live readings alone, in tenths and in whole degrees', () => {
  expect(refreshStepsDegC(evidenceOf([airLog(1)], { zones }))).toEqual([0]);
  expect(refreshStepsDegC(evidenceOf([zoneLog()]))).toEqual([0]);
  const coarse = evidenceOf([zoneLog({ resolutionDegC: 1 })], { zones: [zoneOfLog(0, { resolutionDegC: 1 })] });
  expect(refreshStepsDegC(coarse)).toEqual([0]);
});

test('leaves a log that holds a value within a dead band alone: its steps beyond the band are real', () => {
  let heldDegC = NaN;
  const banded = zoneLog({
    recorded: (s) => {
      if (!(Math.abs(s.degC - heldDegC) < 1)) heldDegC = s.degC;
      return { ...s, degC: heldDegC };
    },
  });
  expect(refreshStepsDegC(evidenceOf([banded]))).toEqual([0]);
});
