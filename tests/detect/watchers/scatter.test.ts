import { expect, test } from 'vitest';
import { scatter } from '../../../src/detect/watchers/scatter.js';
import { makeZone } from '../../make/blocks.js';
import { Random } from '../../make/random.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone({ samplingMs: 10_000, resolutionDegC: 0.01 });

function noisy(count: number, sdDegC: number, slopeDegC = 0): number[] {
  const random = new Random(5);
  return Array.from({ length: count }, (_, i) => Number((180 + slopeDegC * i + sdDegC * random.gauss()).toFixed(2)));
}

test.each([0.05, 0.3, 2])('gives the made noise of %f °C within a tenth, hour by hour', (sdDegC) => {
  const hours = watch(scatter, zone, readings(noisy(6 * 360, sdDegC), 10));
  expect(hours).toHaveLength(6);
  const mean = hours.reduce((sum, { facts }) => sum + facts['noiseDegC']!, 0) / hours.length;
  expect(Math.abs(mean / sdDegC - 1)).toBeLessThan(0.1);
});

test('looks at one difference in seven seconds of a fast log, and finds its noise all the same', () => {
  const fast = makeZone({ samplingMs: 1000, resolutionDegC: 0.01 });
  const hours = watch(scatter, fast, readings(noisy(6 * 3600, 0.3), 1));
  expect(hours).toHaveLength(6);
  for (const { facts } of hours) {
    expect(facts['sampleCount']).toBeLessThan(3600 / 7 + 2);
    expect(Math.abs(facts['noiseDegC']! / 0.3 - 1)).toBeLessThan(0.1);
  }
});

test.each([1, 2, 5])('gives the figure of all differences where the input is read every %d s', (heldS) => {
  const fast = makeZone({ samplingMs: 1000, resolutionDegC: 0.01 });
  const read = noisy(3600 / heldS, 0.3);
  const held = Array.from({ length: 3600 }, (_, i) => read[Math.floor(i / heldS)]!);
  const [hour] = watch(scatter, fast, readings(held, 1));
  const differences = held.slice(2).map((degC, i) => Math.abs(degC - 2 * held[i + 1]! + held[i]!));
  const kept = differences.sort((a, b) => a - b).slice(0, Math.floor(0.9 * differences.length));
  const rmsDegC = Math.sqrt(kept.reduce((sum, degC) => sum + degC ** 2, 0) / kept.length);
  const allDegC = rmsDegC / (0.78945 * Math.sqrt(6));
  expect(allDegC).toBeGreaterThan(0.05);
  expect(Math.abs(hour!.facts['noiseDegC']! / allDegC - 1)).toBeLessThan(0.2);
});

test('does not take a ramp or a few spikes for noise', () => {
  const ramp = noisy(360, 0.1, 0.05);
  for (const i of [50, 120, 300]) ramp[i] = 400;
  const [hour] = watch(scatter, zone, readings(ramp, 10));
  expect(Math.abs(hour!.facts['noiseDegC']! / 0.1 - 1)).toBeLessThan(0.15);
});

test('cannot tell from too few differences or away from set point', () => {
  expect(watch(scatter, zone, readings(noisy(15, 0.1), 10))).toEqual([]);
  expect(watch(scatter, zone, readings(noisy(360, 0.1), 10, { setpointDegC: 220 }))).toEqual([]);
});
