import { expect, test } from 'vitest';
import { washDownsOf } from '../../../src/detect/shared/cold/wash-downs.js';
import { heatedPlant, sound } from '../../make/digests.js';
import type { Evidence } from '../../../src/model/detector.js';
import { HOUR_MS, MINUTE_MS } from '../../make/zone-log.js';

/** From 22:10 to 22:30 of some days every zone falls four times as fast as before, as under water. */
function washedAt(days: readonly number[], plant: Evidence): Evidence {
  const zones = plant.digest.zones.map((zone) => {
    const meanDegC = Float32Array.from(zone.meanDegC);
    for (const day of days) {
      const from = day * 24 * 60 + 22 * 60 + 10;
      for (let i = from; i < from + 20; i++) meanDegC[i] = quicker(zone.meanDegC, meanDegC[i - 1]!, i);
      for (let i = from + 20; i < from + 8 * 60; i++) meanDegC[i] = slower(zone.meanDegC, meanDegC[i - 1]!, i);
    }
    return { ...zone, meanDegC };
  });
  return { ...plant, digest: { ...plant.digest, zones } };
}

/** The log without its odd minutes. */
function everySecond(plant: Evidence): Evidence {
  const zones = plant.digest.zones.map((zone) => {
    const columns = Object.entries(zone).map(([name, column]: [string, Float32Array | Uint16Array]) => {
      const empty = column instanceof Float32Array ? NaN : 0;
      return [name, column.map((value, i) => (i % 2 === 0 ? value : empty))] as const;
    });
    return Object.fromEntries(columns) as unknown as typeof zone;
  });
  const slowZones = plant.zones.map((zone) => ({ ...zone, samplingMs: 2 * MINUTE_MS }));
  return { ...plant, zones: slowZones, digest: { ...plant.digest, zones } };
}

const fallShare = (sound: Float32Array, i: number) => (sound[i]! - 20) / (sound[i - 1]! - 20);
const quicker = (sound: Float32Array, before: number, i: number) => 20 + (before - 20) * fallShare(sound, i) ** 4;
const slower = (sound: Float32Array, before: number, i: number) => 20 + (before - 20) * fallShare(sound, i);

const slow = sound(4).map((zone) => ({ ...zone, tauMinutes: 60 }));

test('sees when all zones of a machine lose heat as under water, and takes no usual cool-down for it', () => {
  const plant = heatedPlant(slow, { days: 5 });
  expect([...washDownsOf(plant).values()].flat()).toEqual([]);
  const seen = [...washDownsOf(washedAt([1, 3], plant)).values()].flat();
  expect(seen.map(({ start }) => Math.floor((start - plant.digest.startMs) / (24 * HOUR_MS)))).toEqual([1, 3]);
  for (const { start, end } of seen) expect(end - start).toBeLessThan(40 * MINUTE_MS);
});

test('sees it in a log with a reading every two minutes', () => {
  const seen = [...washDownsOf(everySecond(washedAt([1, 3], heatedPlant(slow, { days: 5 })))).values()].flat();
  expect(seen.map(({ start }) => Math.floor((start % (7 * 24 * HOUR_MS)) / HOUR_MS) % 24)).toEqual([22, 22]);
});

test('takes listed washings for the machine they name', () => {
  const plant = heatedPlant(sound(3), { days: 2 });
  const { startMs } = plant.digest;
  const stop = { startMs, endMs: startMs + HOUR_MS, zone: null, reason: 'wash', isPlanned: true, isWashDown: true };
  const machine = plant.zones[0]!.machine;
  const of = (name: string | null) => washDownsOf({ ...plant, stops: [{ ...stop, machine: name }] }).get(machine);
  expect(of(machine)).toHaveLength(1);
  expect(of(null)).toHaveLength(1);
  expect(of('another')).toEqual([]);
});
