import { expect, test } from 'vitest';
import { exposureBetween, exposuresOf } from '../../../src/detect/shared/readings/exposure.js';
import { DAY_MS, evidenceOf, MONDAY_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

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
