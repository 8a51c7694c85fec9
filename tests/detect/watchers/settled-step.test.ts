import { expect, test } from 'vitest';
import { settledStep } from '../../../src/detect/watchers/settled-step.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone({ samplingMs: 10_000 });
const calm = (count: number, at = 180) => Array.from({ length: count }, (_, i) => at + 0.1 * (i % 2));

test('finds a step that the loop pulls back, with its size', () => {
  const values = [...calm(20), 182.7, 181.8, 181, 180.5, 180.2, ...calm(20)];
  const found = watch(settledStep, zone, readings(values, 10));
  expect(found).toHaveLength(1);
  expect(found[0]!.facts['stepDegC']).toBeCloseTo(2.7 - 0.1, 6);
});

test('finds a step that an input filter spreads over some seconds', () => {
  const fast = makeZone({ samplingMs: 1000 });
  const found = watch(settledStep, fast, readings([...calm(20), 181.4, 182.2, 182.6, ...calm(20, 182.6)], 1));
  expect(found).toHaveLength(1);
  expect(found[0]!.facts['stepDegC']!).toBeGreaterThan(2.4);
});

test('stays silent on a spike, a ramp, a set-point change and product that comes', () => {
  const flat = { setpointDegC: 180 };
  const single = readings([...calm(20), 184, ...calm(20)], 10, flat);
  const ramp = readings([...calm(20), ...Array.from({ length: 20 }, (_, i) => 180 - 0.9 * i)], 10, flat);
  const change = readings([...calm(20), ...calm(20, 183)], 10).map((s, i) => ({
    ...s,
    setpointDegC: i < 18 ? 180 : 183,
  }));
  const product = readings([...calm(20), ...calm(20, 177)], 10).map((s, i) => ({ ...s, running: i < 20 ? 0 : 1 }));
  for (const samples of [single, ramp, change, product]) expect(watch(settledStep, zone, samples)).toEqual([]);
});

test('stays silent where the change of output explains the step', () => {
  const heatUp = Array.from({ length: 30 }, (_, i) => 30 + 5 * i);
  const values = [...heatUp, ...calm(20), 184, ...calm(20, 184)];
  const at = heatUp.length + 20;
  const driven = readings(values, 10).map((s, i) => ({
    ...s,
    outputPercent: i < 30 ? 100 : Math.abs(i - at) <= 1 ? 100 : 20,
  }));
  const steady = readings(values, 10).map((s, i) => ({ ...s, outputPercent: i < 30 ? 100 : 20 }));
  expect([watch(settledStep, zone, driven).length, watch(settledStep, zone, steady).length]).toEqual([0, 1]);
});
