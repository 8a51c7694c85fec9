import { expect, test } from 'vitest';
import { cardEvents } from '../../../src/detect/judges/card-events.js';
import { ask, factsOf } from '../../make/ask.js';
import type { MadeSample } from '../../make/blocks.js';
import { evidenceOf, MONDAY_MS, opened, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const blip = (minutes: number) => (s: MadeSample) => ((s.timeMs / 60_000) % minutes === 0 ? opened(s) : s);
const seeds = [1, 2, 3, 4, 5, 6];

test('tells the zones of one card that fail at the same moment, without knowing the cards', () => {
  const logs = seeds.map((seed) => zoneLog({ seed, recorded: seed <= 3 ? blip(313) : (s) => s }));
  const evidence = evidenceOf(logs);
  const facts = factsOf(cardEvents, evidence);
  expect(facts).toMatchObject({ groupZonesCount: 3, groupOfMachineShare: 0.5, sharedShare: 1, everywhereShare: 0 });
  expect(facts['sameCardShare']).toBeUndefined();
  expect(facts['chancePValue']!).toBeLessThan(1e-6);
  for (const zone of [3, 4, 5]) expect(ask(cardEvents, evidence, zone).symptoms).toEqual([]);
});

test('says how well the stated cards agree', () => {
  const logs = seeds.map((seed) => zoneLog({ seed, recorded: seed <= 3 ? blip(313) : (s) => s }));
  const zones = seeds.map((_, index) => zoneOfLog(index, { card: index < 3 ? '1A' : '1B' }));
  const facts = factsOf(cardEvents, evidenceOf(logs, { zones }));
  expect(facts).toMatchObject({ sameCardShare: 1, cardCoveredShare: 1 });
  expect(facts['cardPValue']).toBeCloseTo(1 / 10, 12); // both of its mates out of five others: 1 of 10 pairs
});

test('is silent on zones that fail each at its own times', () => {
  const logs = seeds.map((seed) => zoneLog({ seed, recorded: blip([97, 101, 103, 107, 109, 113][seed - 1]!) }));
  for (const zone of seeds.keys()) expect(ask(cardEvents, evidenceOf(logs), zone).symptoms).toEqual([]);
});

test('two zones that each fail on one hot day meet by chance', () => {
  // Every 7 and every 11 minutes within the same day: they meet every 77, far more often than over four days.
  const oneDay = (every: number) => (s: MadeSample) => {
    const minute = (s.timeMs - MONDAY_MS) / 60_000;
    return minute > 2 * 1440 && minute < 3 * 1440 && minute % every === 0 ? opened(s) : s;
  };
  const logs = [1, 2, 3, 4].map((seed) =>
    zoneLog({ seed, recorded: seed <= 2 ? oneDay(seed === 1 ? 7 : 11) : (s) => s }),
  );
  const always = cardEvents.meta.defaults;
  const settings = { ...always, smallestSharedShare: 0 };
  for (const zone of [0, 1]) {
    const { symptoms } = cardEvents.judge(evidenceOf(logs), settings)[zone]!;
    expect(symptoms).toEqual([]);
  }
});
