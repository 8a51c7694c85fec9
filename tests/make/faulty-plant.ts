import type { Evidence } from '../../src/model/detector.js';
import { MINUTE_MS } from '../../src/model/time-units.js';
import { DAY_MS, evidenceOf, MONDAY_MS, opened, sensorAlarm, zoneLog } from './zone-log.js';

/** Zones with one fault each and two sound ones, so that most judges have something to say facts about. */
export function faultyPlant(): Evidence {
  const isChatter = (ms: number) => ms > MONDAY_MS + DAY_MS && Math.floor(ms / 30_000) % 53 === 0;
  const steps = (ms: number) => (ms > MONDAY_MS + DAY_MS && Math.floor(ms / (20 * MINUTE_MS)) % 2 === 0 ? 4 : 0);
  const drift = (ms: number) => -Math.max(0, (ms - MONDAY_MS) / DAY_MS - 1.5) * 2;
  const isLongOpen = (ms: number) => ms > MONDAY_MS + 2.4 * DAY_MS && ms < MONDAY_MS + 2.95 * DAY_MS;
  const logs = [
    zoneLog({ seed: 1, recorded: (s) => (isChatter(s.timeMs) && s.running === 1 ? opened(s) : s) }),
    zoneLog({ seed: 2, offsetDegC: steps }),
    zoneLog({ seed: 3, recorded: (s, b) => (s.timeMs > MONDAY_MS + 2 * DAY_MS && b ? { ...s, degC: b.degC } : s) }),
    zoneLog({ seed: 4, recorded: (s) => (isLongOpen(s.timeMs) ? opened(s) : s) }),
    zoneLog({ seed: 5, recorded: (s) => (isChatter(s.timeMs + 7 * 30_000) ? { ...s, degC: 999.9 } : s) }),
    zoneLog({ seed: 6, recorded: (s) => (isChatter(s.timeMs + 9 * 30_000) ? { ...s, degC: s.degC + 12 } : s) }),
    zoneLog({ seed: 7, noiseDegC: 1.5 }),
    zoneLog({ seed: 8, recorded: (s) => (isLongOpen(s.timeMs) ? null : s) }),
    zoneLog({ seed: 9, offsetDegC: drift }),
    zoneLog({ seed: 10 }),
    zoneLog({ seed: 11 }),
  ];
  const alarms = [sensorAlarm(0, MONDAY_MS + 1.5 * DAY_MS, MONDAY_MS + 1.5 * DAY_MS + 20_000)];
  return evidenceOf(logs, { alarms });
}
