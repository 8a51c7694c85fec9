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
