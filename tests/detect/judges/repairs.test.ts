import { expect, test } from 'vitest';
import { repairs } from '../../../src/detect/judges/repairs.js';
import { repairsOf } from '../../../src/detect/shared/opens/repair-lives.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, opened, zoneLog } from '../../make/zone-log.js';

const start = MONDAY_MS + 2 * DAY_MS + 15 * HOUR_MS;
const end = MONDAY_MS + 3 * DAY_MS + 3 * HOUR_MS;
const others = [2, 3, 4].map((seed) => zoneLog({ seed, days: 6 }));
const long = (s: MadeSample) => (s.timeMs >= start && s.timeMs < end ? opened(s) : s);

test('finds the end of a long fault during a stop and the offset of the new sensor', () => {
  const log = zoneLog({ days: 6, recorded: long, offsetDegC: (ms) => (ms > end ? 0.6 : 0) });
  const facts = factsOf(repairs, evidenceOf([log, ...others]));
  expect(facts).toMatchObject({ listedCount: 0, opensBeforeCount: 1, opensAfterCount: 0 });
  expect(Math.abs(facts['faultMinutes']! - 12 * 60)).toBeLessThan(1);
  expect(Math.abs(facts['offsetChangeDegC']! - 0.6)).toBeLessThan(0.15);
});

test('does not take an open that ends while the machine runs, or comes back, for a repair', () => {
  const runs = (s: MadeSample) => (s.timeMs >= start && s.timeMs < start + 2 * HOUR_MS ? opened(s) : s);
  const back = (s: MadeSample) => (s.timeMs === end + HOUR_MS ? opened(s) : long(s));
  for (const recorded of [runs, back]) {
    expect(ask(repairs, evidenceOf([zoneLog({ days: 6, recorded }), ...others])).symptoms).toEqual([]);
  }
});

test('takes a line of the maintenance list and the end of the fault for one repair', () => {
  const line = {
    timeMs: end + HOUR_MS,
    zone: 0,
    zoneText: 'Zone 1',
    done: 'RTD replaced',
    found: 'open',
    cause: 'sensor' as const,
    isReplacement: true,
  };
  const evidence = evidenceOf([zoneLog({ days: 6, recorded: long }), ...others], { maintenance: [line] });
  expect(ask(repairs, evidence).symptoms).toHaveLength(1);
  expect(factsOf(repairs, evidence)).toMatchObject({ listedCount: 1, replacementCount: 1 });
  // the line stands hours after the fault ended, and its words belong to that end
  expect(repairsOf(evidence)[0]).toMatchObject([
    { from: 'maintenance list', listedMs: evidence.maintenance[0]!.timeMs },
  ]);
});

test.each([
  ['the machine ran', true],
  ['were logged, where that is not known', false],
])('counts bursts on either side of a listed repair, by the hours that %s', (_, isRunningLogged) => {
  const repairMs = MONDAY_MS + 3 * DAY_MS;
  const isOpen = (ms: number) => ms > MONDAY_MS + DAY_MS && Math.floor(ms / 30_000) % 240 === 7;
  const line = { timeMs: repairMs, zone: 0, zoneText: 'Zone 1', done: 'Cable replaced', found: '' };
  const about = (cause: 'wiring' | 'sensor', goesOn: boolean) => {
    const told = (s: MadeSample) => (isRunningLogged ? s : { ...s, running: NaN });
    const recorded = (s: MadeSample) => told(isOpen(s.timeMs) && (goesOn || s.timeMs < repairMs) ? opened(s) : s);
    const maintenance = [{ ...line, cause, isReplacement: cause === 'sensor' }];
    const logs = [zoneLog({ days: 6, recorded }), ...others.map((log) => log.map(told))];
    return factsOf(repairs, evidenceOf(logs, { maintenance }));
  };
  const ended = about('wiring', false);
  expect(ended).toMatchObject({
    wiringRepairCount: 1,
    replacementCount: 0,
    burstsAfterCount: 0,
    burstsBeforeCount: 23,
  });
  expect(ended['fewerAfterPValue']).toBeLessThan(1e-6);
  const goesOn = about('sensor', true);
  expect(goesOn).toMatchObject({ wiringRepairCount: 0, replacementCount: 1 });
  expect(goesOn['afterRatio']).toBeGreaterThan(0.7);
  expect(goesOn['fewerAfterPValue']).toBeGreaterThan(0.1);
});
