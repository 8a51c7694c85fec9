import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mostBuckets, thinSeries } from '../../src/digest/thin.js';
import { emptyZoneDigest } from '../../src/digest/zone-digest.js';
import type { ZoneDigest } from '../../src/model/digest.js';

const periodMs = 60_000;

function digestOf(readings: readonly number[]): ZoneDigest {
  const zone = emptyZoneDigest(readings.length);
  readings.forEach((degC, i) => {
    zone.minDegC[i] = degC;
    zone.maxDegC[i] = degC;
    zone.readingCount[i] = Number.isNaN(degC) ? 0 : 60;
  });
  return zone;
}

test('keeps every extreme of two weeks in no more than the most buckets', () => {
  const length = 14 * 24 * 60;
  const readings = Array.from({ length }, (_, minute) => 180 + Math.sin(minute / 30));
  readings[7_777] = 412.5;
  readings[12_345] = -40;
  const trace = thinSeries(digestOf(readings), { startMs: 0, periodMs, length });
  expect(trace.timeMs.length).toBeLessThanOrEqual(mostBuckets);
  const hot = trace.maxDegC.indexOf(412.5);
  const cold = trace.minDegC.indexOf(-40);
  const widthMs = trace.timeMs[1]! - trace.timeMs[0]!;
  expect(Math.floor((7_777 * periodMs) / widthMs)).toBe(hot);
  expect(Math.floor((12_345 * periodMs) / widthMs)).toBe(cold);
});

test('the band of a bucket holds every reading of its minutes, whatever the readings', () => {
  const readings = fc.array(fc.oneof(fc.constant(NaN), fc.integer({ min: -200, max: 1800 })), { maxLength: 200 });
  fc.assert(
    fc.property(readings, fc.integer({ min: 1, max: 40 }), (minutes, most) => {
      const trace = thinSeries(digestOf(minutes), { startMs: 0, periodMs, length: minutes.length }, most);
      expect(trace.timeMs.length).toBeLessThanOrEqual(most);
      const placesPerBucket = Math.max(1, Math.ceil(minutes.length / most));
      minutes.forEach((degC, i) => {
        if (Number.isNaN(degC)) return;
        const bucket = Math.floor(i / placesPerBucket);
        expect(trace.minDegC[bucket]).toBeLessThanOrEqual(degC);
        expect(trace.maxDegC[bucket]).toBeGreaterThanOrEqual(degC);
        expect(minutes).toContain(trace.minDegC[bucket]);
        expect(minutes).toContain(trace.maxDegC[bucket]);
      });
    }),
  );
});

test('averages output and running, keeps the last set point, adds up samples without a temperature', () => {
  const zone = digestOf([180, 180, 180, 180]);
  zone.outputPercent.set([10, 20, NaN, 60]);
  zone.runningShare.set([1, 0, 1, 1]);
  zone.setpointDegC.set([150, 180, 180, NaN]);
  zone.badCount.set([1, 2, 0, 4]);
  const trace = thinSeries(zone, { startMs: 0, periodMs, length: 4 }, 2);
  expect(trace.timeMs).toEqual([0, 120_000]);
  expect(trace.outputPercent).toEqual([15, 60]);
  expect(trace.runningShare).toEqual([0.5, 1]);
  expect(trace.setpointDegC).toEqual([180, 180]);
  expect(trace.badCount).toEqual([3, 4]);
});

test('says null where nothing was logged, and gives empty columns for an empty grid', () => {
  const silent = thinSeries(digestOf([NaN, NaN, 20, 21]), { startMs: 0, periodMs, length: 4 }, 2);
  expect(silent.minDegC).toEqual([null, 20]);
  expect(silent.outputPercent).toEqual([null, null]);
  expect(thinSeries(digestOf([]), { startMs: 0, periodMs, length: 0 }).timeMs).toEqual([]);
});
