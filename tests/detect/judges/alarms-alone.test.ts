import { expect, test } from 'vitest';
import { alarmsAlone } from '../../../src/detect/judges/alarms-alone.js';
import type { AlarmKind, AlarmSpan } from '../../../src/model/alarm.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import {
  DAY_MS,
  evidenceOf,
  HOUR_MS,
  MINUTE_MS,
  MONDAY_MS,
  opened,
  sensorAlarm,
  zoneLog,
} from '../../make/zone-log.js';

const at = MONDAY_MS + DAY_MS + 10 * HOUR_MS;
const alarm = (zone: number, kind: AlarmKind, startMs: number, minutes: number): AlarmSpan => ({
  ...sensorAlarm(zone, startMs, startMs + minutes * MINUTE_MS),
  kind,
});
const isAtLimit = (ms: number) => ms >= at && ms < at + HOUR_MS;
const full = (s: MadeSample) => (isAtLimit(s.timeMs) ? { ...s, outputPercent: 100 } : s);
const logs = [zoneLog({ recorded: full }), ...[2, 3, 4].map((seed) => zoneLog({ seed }))];
const withAlarms = (...alarms: readonly AlarmSpan[]) => evidenceOf(logs, { alarms });

test('tells a low alarm that stands on one zone, and that its output was at the limit', () => {
  const evidence = withAlarms(alarm(0, 'temperature-low', at, 60), alarm(0, 'deviation-low', at + 3 * HOUR_MS, 30));
  const facts = factsOf(alarmsAlone, evidence);
  expect(facts).toMatchObject({ lowMinutes: 90, lowCount: 2, highMinutes: 0, highCount: 0 });
  expect(facts['lowFullOutputShare']).toBeGreaterThan(0.6);
  expect(facts['lowFullOutputShare']).toBeLessThan(0.75);
  expect(ask(alarmsAlone, evidence, 1).symptoms).toEqual([]);
});

test('tells a high alarm on the other side', () => {
  const facts = factsOf(alarmsAlone, withAlarms(alarm(0, 'temperature-high', at, 45)));
  expect(facts).toMatchObject({ highMinutes: 45, highCount: 1, lowMinutes: 0 });
});

test('is silent on alarms that half of the machine has, also a few minutes later, and on short ones', () => {
  const together = [0, 1, 2].map((zone) => alarm(zone, 'temperature-low', at + 2 * zone * MINUTE_MS, 90));
  for (const evidence of [withAlarms(...together), withAlarms(alarm(0, 'temperature-low', at, 20))])
    expect(ask(alarmsAlone, evidence).symptoms).toEqual([]);
});

test('is silent on an alarm that a jump of the reading raised', () => {
  const jumped = (s: MadeSample) => (isAtLimit(s.timeMs) ? { ...s, degC: s.degC + 100 } : s);
  const evidence = evidenceOf([zoneLog({ recorded: jumped }), ...logs.slice(1)], {
    alarms: [alarm(0, 'temperature-high', at + 20_000, 60)],
  });
  expect(ask(alarmsAlone, evidence).symptoms).toEqual([]);
});

test('is silent where the reading itself was lost, or the list holds no end', () => {
  const lost = evidenceOf([zoneLog({ recorded: (s) => (isAtLimit(s.timeMs) ? opened(s) : s) }), ...logs.slice(1)], {
    alarms: [alarm(0, 'temperature-low', at + 5 * MINUTE_MS, 50)],
  });
  const endless = withAlarms(alarm(0, 'temperature-low', at, NaN));
  for (const evidence of [lost, endless]) expect(ask(alarmsAlone, evidence).symptoms).toEqual([]);
});

test('cannot tell without an alarm log or without other zones', () => {
  expect(ask(alarmsAlone, { ...withAlarms(), hasAlarmLog: false }).unable).toMatch(/no alarm log/);
  expect(ask(alarmsAlone, evidenceOf(logs.slice(0, 1), { alarms: [] })).unable).toMatch(/only zone/);
});
