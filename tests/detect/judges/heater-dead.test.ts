import { expect, test } from 'vitest';
import { heaterDead } from '../../../src/detect/judges/heater-dead.js';
import { ask, factsOf } from '../../make/ask.js';
import { heatedPlant, hoursOff, sound } from '../../make/digests.js';
import { Random } from '../../make/random.js';
import { DAY_MS, evidenceOf, HOUR_MS, MINUTE_MS, MONDAY_MS, zoneOfLog } from '../../make/zone-log.js';

test('finds the hour from which a zone cools at full output', () => {
  const evidence = heatedPlant([{ power: (h) => (h > 60 ? 0 : 1) }, ...sound(4)]);
  const [symptom] = ask(heaterDead, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 60)).toBeLessThan(1);
  expect(symptom!.facts['fallRatio'] ?? 1).toBeLessThan(2);
  expect(symptom!.facts['lastsToEndCount']).toBe(0); // switched off before the log ends, on a weekend
});

test('works without an output from the peers that stay hot', () => {
  const zones = [{ power: (h: number) => (h > 60 ? 0 : 1) }, ...sound(4)];
  const evidence = heatedPlant(zones, { hasOutput: false, hasSetpoint: false });
  expect(factsOf(heaterDead, evidence)['noHeatMinutes']).toBeGreaterThan(600);
});

test('sees it within minutes when the machine starts and one zone stays cold, by the readings alone', () => {
  // Dead since the night; heat is called for at hour 54, and the log ends half an hour later.
  const days = 54.6 / 24;
  const plan = { hasOutput: false, hasSetpoint: false, days };
  const evidence = heatedPlant([{ power: (h) => (h > 50 ? 0 : 1) }, ...sound(4)], plan);
  const [symptom] = ask(heaterDead, evidence).symptoms;
  expect(hoursOff(symptom!.startMs, 54.2)).toBeLessThan(0.25);
  for (const zone of [1, 2, 3, 4]) expect(ask(heaterDead, evidence, zone).symptoms).toEqual([]);
  const asleep = Array.from({ length: 3 }, () => ({ power: (h: number) => (h > 50 ? 0 : 1) }));
  expect(ask(heaterDead, heatedPlant([...asleep, ...sound(5)], plan)).symptoms).toEqual([]); // another machine's zones
});

test('is silent on a shorted input, on a power cut for all and on ordinary heat-ups', () => {
  const short = { shownDegC: (h: number) => (h > 60 && h < 64 ? 24 + 0.3 * Math.sin(7 * h) : null) };
  expect(ask(heaterDead, heatedPlant([short, ...sound(4)])).symptoms).toEqual([]);
  const cut = Array.from({ length: 5 }, () => ({ power: (h: number) => (h > 60 && h < 63 ? 0 : 1) }));
  expect(ask(heaterDead, heatedPlant(cut)).symptoms).toEqual([]);
  expect(ask(heaterDead, heatedPlant(sound(4), { days: 3 })).symptoms).toEqual([]);
});

test('is silent on three of many zones whose heat goes and comes back together: they share a switch', () => {
  const off = { power: (h: number) => (h > 60 && h < 62 ? 0 : 1) };
  const switched = heatedPlant([off, off, off, ...sound(10)]);
  for (const zone of [0, 1, 2]) expect(ask(heaterDead, switched, zone).symptoms).toEqual([]);
  const alone = heatedPlant([off, ...sound(12)]);
  expect(ask(heaterDead, alone).symptoms).toHaveLength(1);
});

test('knows a capped output as full', () => {
  const capped = heatedPlant([{ power: (h) => (h > 60 ? 0 : 1) }, ...sound(4)], { outputCap: 0.8 });
  expect(ask(heaterDead, capped).symptoms).toHaveLength(1);
  for (const zone of capped.zones.slice(1)) expect(ask(heaterDead, capped, zone.index).symptoms).toEqual([]);
});

test('cannot tell of a zone that was never settled', () => {
  expect(ask(heaterDead, heatedPlant([{ power: () => 0 }, ...sound(3)], { days: 3 })).unable).toMatch(/never settled/);
});

test('by the readings alone, is silent on a zone that stands by with the others, though they mostly do', () => {
  // At work on weekdays from 8 to 18 o'clock, else held at 75 °C; zone 1 has no rows for the nights.
  const isAtWork = (hours: number) => hours % (7 * 24) < 5 * 24 && hours % 24 >= 8 && hours % 24 < 18;
  const isWeekend = (timeMs: number) => timeMs >= MONDAY_MS + 5 * DAY_MS && timeMs < MONDAY_MS + 7 * DAY_MS;
  const random = new Random(1);
  const logs = [0, 1, 2, 3, 4].map((zone) => {
    let degC = 75;
    return Array.from({ length: 9 * 1440 }, (_, minute) => {
      degC += ((isAtWork(minute / 60) ? 150 : 75) - degC) / 10;
      return { timeMs: MONDAY_MS + minute * MINUTE_MS, degC: Number((degC + 0.2 * random.gauss()).toFixed(1)) };
    }).filter(({ timeMs }) => zone > 0 || isAtWork((timeMs - MONDAY_MS) / HOUR_MS) || isWeekend(timeMs));
  });
  const has = { reading: true, setpoint: false, output: false, running: false };
  const zones = logs.map((_, index) => zoneOfLog(index, { has, samplingMs: MINUTE_MS }));
  expect(ask(heaterDead, evidenceOf(logs, { zones })).symptoms).toEqual([]);
});
