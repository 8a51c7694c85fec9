import { expect, test } from 'vitest';
import { soaksOf } from '../../../src/detect/shared/cold/soaks.js';
import { startDigest } from '../../../src/digest/build-digest.js';
import { makeBlock } from '../../make/blocks.js';
import { evidenceOf, HOUR_MS, MINUTE_MS, zoneLog, zoneOfLog } from '../../make/zone-log.js';

const readingOnly = { reading: true, setpoint: false, output: false, running: false };
const zones = [0, 1, 2].map((index) => zoneOfLog(index, { has: readingOnly }));
const bare = (offsetDegC: number, heldDegC: number) =>
  zoneLog({ setpointDegC: heldDegC, seed: 1 + offsetDegC }).map(({ timeMs, degC }) => ({
    timeMs,
    degC: degC + offsetDegC,
  }));

test('finds soaks of zones that are warm at other times', () => {
  const { points } = soaksOf(evidenceOf([bare(0, 180), bare(2, 180), bare(0, 180)], { zones }), 1);
  expect(points.length).toBeGreaterThan(2);
  expect(points.at(-1)!.offsetDegC).toBeCloseTo(2, 0);
});

test('takes no soak of places that were never seen heated: their air may differ by right', () => {
  const { points, unable } = soaksOf(evidenceOf([bare(0, 30), bare(-12, 30), bare(3, 30)], { zones }), 1);
  expect(points).toEqual([]);
  expect(unable).toContain('it was never warm');
});

test('places its points in time where the periods of a long log make no whole hour', () => {
  const logs = [0, 2, 0].map((offsetDegC, i) =>
    zoneLog({ days: 20, everyS: 60, seed: i, offsetDegC: () => offsetDegC }),
  );
  const digest = startDigest(zones, 800_000);
  logs.forEach((samples, zone) => digest.take(makeBlock(samples, zone)));
  const evidence = { ...evidenceOf(logs, { zones }), digest: digest.finish() };
  expect(evidence.digest.periodMs).toBe(8 * MINUTE_MS);
  const { points } = soaksOf(evidence, 1);
  expect(points.length).toBeGreaterThan(20);
  for (const { startMs, endMs } of points) {
    // Heated from 6 to 22 o'clock.
    for (const ms of [startMs, endMs]) expect((ms / HOUR_MS + 2) % 24).toBeLessThanOrEqual(8);
  }
});
