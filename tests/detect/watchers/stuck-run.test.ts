import { expect, test } from 'vitest';
import { stuckRun } from '../../../src/detect/watchers/stuck-run.js';
import { makeZone } from '../../make/blocks.js';
import { readings, watch } from '../../make/watch.js';

const zone = makeZone({ samplingMs: 60_000 });
const live = (count: number) => Array.from({ length: count }, (_, i) => 180 + 0.1 * (i % 3));

test('lists a long run with what moved meanwhile', () => {
  const samples = readings([...live(60), ...Array<number>(90).fill(181.5), ...live(60)], 60);
  const found = watch(
    stuckRun,
    zone,
    samples.map((s, i) => ({ ...s, outputPercent: i, setpointDegC: 180 })),
  );
  expect(found).toHaveLength(1);
  expect(found[0]!.facts).toMatchObject({
    valueDegC: 181.5,
    sampleCount: 90,
    durationMinutes: 89,
    outputRangePercent: 89,
    setpointRangeDegC: 0,
  });
});

test('lists a short run when a jump led to it: a code', () => {
  const found = watch(stuckRun, zone, readings([...live(60), -1, -1, -1, -1, ...live(60)], 60));
  expect(found.map(({ facts }) => [facts['valueDegC'], facts['sampleCount']])).toEqual([[-1, 4]]);
});

test('is silent on a live input and does not join runs across a hole', () => {
  expect(watch(stuckRun, zone, readings(live(300), 60))).toEqual([]);
  const apart = [
    ...readings(Array<number>(15).fill(180), 60),
    ...readings(Array<number>(15).fill(180), 60).map((s) => ({ ...s, timeMs: s.timeMs + 7_200_000 })),
  ];
  expect(watch(stuckRun, zone, apart)).toEqual([]);
});
