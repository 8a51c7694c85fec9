import { expect, test } from 'vitest';
import { opensGrowth } from '../../../src/detect/judges/opens-growth.js';
import { ask, factsOf } from '../../make/ask.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, opened, zoneLog } from '../../make/zone-log.js';

const opensPerDay = (counts: readonly number[]) => {
  const starts = new Set(
    counts.flatMap((n, day) =>
      Array.from({ length: n }, (_, i) => MONDAY_MS + day * DAY_MS + (8 * 60 + i * 24) * 60_000),
    ),
  );
  return evidenceOf([zoneLog({ days: counts.length, recorded: (s) => (starts.has(s.timeMs) ? opened(s) : s) })]);
};

test('tells opens that become more from day to day', () => {
  const facts = factsOf(opensGrowth, opensPerDay([0, 1, 2, 4, 8, 16]));
  expect([facts['firstCount'], facts['lastCount'], facts['daysWithOpensCount']]).toEqual([3, 28, 5]);
  expect(facts['growthPValue']!).toBeLessThan(0.001);
});

test('sees no growth in a steady trickle', () => {
  expect(factsOf(opensGrowth, opensPerDay([5, 5, 5, 5, 5, 5]))['growthPValue']!).toBeGreaterThan(0.2);
});

test('an even rate is even though the log ends within a day', () => {
  // One open every two hours, to four hours into the sixth day.
  const isOpen = (ms: number) => (ms - MONDAY_MS) % (2 * HOUR_MS) === HOUR_MS;
  const log = zoneLog({ days: 5 + 4 / 24, recorded: (s) => (isOpen(s.timeMs) ? opened(s) : s) });
  const facts = factsOf(opensGrowth, evidenceOf([log]));
  expect(facts['dayCount']).toBe(5);
  expect(facts['dispersionRatio']!).toBeLessThan(0.1);
  expect(facts['trendPValue']!).toBeGreaterThan(0.5);
});

test('cannot tell when the first open is long and early', () => {
  const log = zoneLog({ recorded: (s) => (s.timeMs > MONDAY_MS + 9 * HOUR_MS ? opened(s) : s) });
  expect(ask(opensGrowth, evidenceOf([log])).unable).toMatch(/up to the first long open/);
});
