import { expect, test } from 'vitest';
import { spike } from '../../../src/detect/watchers/spike.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone({ samplingMs: 10_000 });
const calm = (count: number) => Array.from({ length: count }, (_, i) => 180 + 0.1 * (i % 2));

test('finds spikes of one to three samples with their size', () => {
  const values = [...calm(20), 190, ...calm(20), 175, 174, ...calm(20), 190, 191, 190, ...calm(20)];
  const found = watch(spike, zone, readings(values, 10));
  expect(found.map(({ facts }) => [facts['sampleCount'], Math.round(facts['sizeDegC']!)])).toEqual([
    [1, 10],
    [2, -6],
    [3, 11],
  ]);
});

test('counts a spike on top of a spike once', () => {
  const found = watch(spike, zone, readings([...calm(20), 190, 200, 190, ...calm(20)], 10));
  expect(found.map(({ facts }) => facts['sampleCount'])).toEqual([3]);
});

test('stays silent on a step that stays, a step with a tail and noise', () => {
  const step = [...calm(20), ...calm(20).map((v) => v + 10)];
  const tail = [...calm(20), 185, 184, 183, 182.2, 181.5, 181, 180.6, ...calm(20)];
  for (const values of [step, tail, calm(60)]) expect(watch(spike, zone, readings(values, 10))).toEqual([]);
});

test('stays silent on a dip that the zone can make by heat', () => {
  const dips = Array.from({ length: 12 }, () => [...calm(10), 170, 160, 170]).flat();
  expect(watch(spike, zone, readings(dips, 10))).toEqual([]);
});
