import { expect, test } from 'vitest';
import { scatterGrowth } from '../../../src/detect/judges/scatter-growth.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { Random } from '../../make/random.js';
import { DAY_MS, evidenceOf, HOUR_MS, MONDAY_MS, zoneLog } from '../../make/zone-log.js';

function noisier(seed: number, sdPerDay: number) {
  const random = new Random(seed);
  return (s: MadeSample): MadeSample => {
    const sd = (sdPerDay * (s.timeMs - MONDAY_MS)) / DAY_MS;
    return { ...s, degC: Number((s.degC + sd * random.gauss()).toFixed(1)) };
  };
}

test('tells noise that grows on one zone', () => {
  const evidence = evidenceOf([
    zoneLog({ days: 6, recorded: noisier(9, 0.15) }),
    zoneLog({ days: 6, seed: 2 }),
    zoneLog({ days: 6, seed: 3 }),
  ]);
  const facts = factsOf(scatterGrowth, evidence);
  expect(facts['growthRatio']!).toBeGreaterThan(2);
  expect(facts['trendPValue']!).toBeLessThan(0.01);
  expect(ask(scatterGrowth, evidence, 1).symptoms).toEqual([]);
});

test('is silent where the noise of all zones grows', () => {
  const logs = [1, 2, 3].map((seed) => zoneLog({ days: 6, seed, recorded: noisier(seed + 20, 0.15) }));
  expect(ask(scatterGrowth, evidenceOf(logs)).symptoms).toEqual([]);
});

test('tells when it began, and whether the output hunts with it', () => {
  const fromMs = MONDAY_MS + 3 * DAY_MS;
  const random = new Random(9);
  const seen = (ms: number) => (ms > fromMs ? 1.2 * random.gauss() : 0);
  const noisy = zoneLog({ days: 6, offsetDegC: seen });
  const log = evidenceOf([noisy, zoneLog({ days: 6, seed: 2 }), zoneLog({ days: 6, seed: 3 })]);
  const [symptom] = ask(scatterGrowth, log).symptoms;
  expect(Math.abs(symptom!.startMs - (fromMs + 6 * HOUR_MS))).toBeLessThanOrEqual(HOUR_MS); // heats from 6 o'clock
  expect(symptom!.facts['outputGrowthRatio']!).toBeGreaterThan(2);
  const recorded = zoneLog({ days: 6, recorded: noisier(9, 0.15) });
  const facts = factsOf(
    scatterGrowth,
    evidenceOf([recorded, zoneLog({ days: 6, seed: 2 }), zoneLog({ days: 6, seed: 3 })]),
  );
  expect(facts['outputGrowthRatio']!).toBeLessThan(1.3);
});

test('cannot tell from half a shift', () => {
  const log = zoneLog({ days: 1 }).filter((s) => s.timeMs < MONDAY_MS + 12 * HOUR_MS);
  expect(ask(scatterGrowth, evidenceOf([log])).unable).toMatch(/settled readings, needed 12/);
});

test('tells some hours that are louder than the zone is at that time of other days, alone on its machine', () => {
  const fromMs = MONDAY_MS + 4 * DAY_MS + 12 * HOUR_MS;
  const isLoud = (ms: number) => ms >= fromMs && ms < fromMs + 4 * HOUR_MS;
  const loud = (seed: number) => {
    const random = new Random(seed);
    return (s: MadeSample): MadeSample =>
      isLoud(s.timeMs) ? { ...s, degC: Number((s.degC + 1.2 * random.gauss()).toFixed(1)) } : s;
  };
  const others = [2, 3].map((seed) => zoneLog({ days: 7, seed }));
  const evidence = evidenceOf([zoneLog({ days: 7, recorded: loud(9) }), ...others]);
  const facts = factsOf(scatterGrowth, evidence);
  expect(facts['loudHours']).toBeGreaterThan(3);
  expect(facts['loudHours']).toBeLessThan(5.1);
  expect(facts['loudNoiseDegC']).toBeGreaterThan(0.9);
  expect(ask(scatterGrowth, evidence, 1).symptoms).toEqual([]);
  // All zones at once are the machine, or the weather.
  const all = [1, 2, 3].map((seed) => zoneLog({ days: 7, seed, recorded: loud(seed + 20) }));
  expect(ask(scatterGrowth, evidenceOf(all)).symptoms).toEqual([]);
});
