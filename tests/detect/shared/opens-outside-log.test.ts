import { expect, test } from 'vitest';
import { opensOf } from '../../../src/detect/shared/opens/opens.js';
import { DAY_MS, evidenceOf, MONDAY_MS, sensorAlarm, zoneLog } from '../../make/zone-log.js';

test('alarms of the weeks before and after the log are none of its opens', () => {
  const starts = [-7 * DAY_MS, -3_600_000, DAY_MS, 2 * DAY_MS, 30 * DAY_MS].map((ms) => MONDAY_MS + ms);
  const alarms = starts.map((ms) => sensorAlarm(0, ms, ms + 60_000));
  const [opens] = opensOf(evidenceOf([zoneLog({})], { alarms }));
  expect(opens!.map(({ startMs }) => startMs)).toEqual(starts.slice(2, 4));
});

test('an alarm that stood when the log began is one of them', () => {
  const alarms = [sensorAlarm(0, MONDAY_MS - 3_600_000, MONDAY_MS + 60_000)];
  expect(opensOf(evidenceOf([zoneLog({})], { alarms }))[0]).toHaveLength(1);
});
