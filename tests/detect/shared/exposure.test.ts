import { expect, test } from 'vitest';
import { conditionsOf, exposureBetween, exposuresOf } from '../../../src/detect/shared/readings/exposure.js';
import {
  DAY_MS,
  evidenceOf,
  HOUR_MS,
  MINUTE_MS,
  MONDAY_MS,
  stopAlarm,
  zoneLog,
  zoneOfLog,
} from '../../make/zone-log.js';

test.each([30, 60, 120, 300])('counts the hours of a log with a reading every %i s', (everyS) => {
  const evidence = evidenceOf([zoneLog({ everyS, days: 2 })], {
    zones: [zoneOfLog(0, { samplingMs: everyS * 1000 })],
  });
  const { loggedHours, runningHours, stoppedHours } = exposuresOf(evidence)[0]!;
  expect(loggedHours).toBeCloseTo(48, 0);
  // It runs from 7 to 22 o'clock, less a stop of 4 to 9 minutes in every hour.
  expect(runningHours).toBeGreaterThan(2 * 15 * 0.85);
  expect(runningHours).toBeLessThan(2 * 15 * 0.95);
  expect(runningHours + stoppedHours).toBeGreaterThan(0.95 * loggedHours);
  expect(exposureBetween(evidence, 0, MONDAY_MS + DAY_MS, Infinity).loggedHours).toBeCloseTo(24, 0);
});

test('two stop alarms at once stop the machine once', () => {
  const log = zoneLog({ everyS: 60, days: 2 }).map((sample) => ({ ...sample, running: NaN }));
  const stopMs = MONDAY_MS + 10 * HOUR_MS;
  const stops = [stopMs, stopMs, stopMs + HOUR_MS].map((startMs) => stopAlarm(startMs, startMs + MINUTE_MS / 2));
  const [conditions] = conditionsOf(
    evidenceOf([log], { zones: [zoneOfLog(0, { samplingMs: 60_000 })], alarms: stops }),
  );
  expect(conditions!.runningFrom).toBe('stop alarms');
  expect(conditions!.runningShare[10 * 60]).toBeCloseTo(0.5, 6);
  expect(conditions!.runningShare[11 * 60]).toBeCloseTo(0.5, 6);
});
