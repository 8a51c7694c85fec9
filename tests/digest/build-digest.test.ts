import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SMALLEST_PERIOD_MS, startDigest } from '../../src/digest/build-digest.js';
import { coarsenDigest, mergeDigests } from './merged-digests.js';
import { BYTES_PER_PLACE, numberColumns } from '../../src/digest/zone-digest.js';
import type { PlantDigest } from '../../src/model/digest.js';
import { readingState } from '../../src/model/sample-block.js';
import { makeBlock, makeBlocks, makeZone, type MadeSample } from '../make/blocks.js';

const zone = makeZone();
const NOON_MS = Date.UTC(2026, 2, 2, 12);

function digestOf(samples: readonly MadeSample[], cuts: readonly number[] = [], budgetBytes?: number): PlantDigest {
  const growing = startDigest([zone], budgetBytes);
  for (const block of makeBlocks(samples, cuts)) growing.take(block);
  return growing.finish();
}

/** Equal up to the rounding of 32-bit columns. */
function expectSame(a: PlantDigest, b: PlantDigest): void {
  expect([a.startMs, a.periodMs, a.length]).toEqual([b.startMs, b.periodMs, b.length]);
  a.zones.forEach((zoneA, z) => {
    const zoneB = b.zones[z]!;
    expect(Array.from(zoneA.readingCount)).toEqual(Array.from(zoneB.readingCount));
    expect(Array.from(zoneA.badCount)).toEqual(Array.from(zoneB.badCount));
    for (const column of numberColumns) {
      zoneA[column].forEach((value, i) => {
        if (Number.isNaN(value)) expect(zoneB[column][i], `${column} ${i}`).toBeNaN();
        else expect(Math.abs(zoneB[column][i]! - value), `${column} ${i}`).toBeLessThan(2e-3);
      });
    }
  });
}

/** Numbers that differ by more than rounding, or are known to one digest only. */
function countUnlike(a: PlantDigest, b: PlantDigest): number {
  let unlike = 0;
  a.zones.forEach((zoneA, z) => {
    for (const column of ['readingCount', 'badCount', ...numberColumns] as const) {
      zoneA[column].forEach((value, i) => {
        const other = b.zones[z]![column][i]!;
        if (!(Math.abs(other - value) < 2e-3) && !(Number.isNaN(value) && Number.isNaN(other))) unlike++;
      });
    }
  });
  return unlike;
}

const anySamples = fc
  .array(
    fc.record({
      stepMs: fc.integer({ min: 1, max: 90_000 }),
      degC: fc.integer({ min: -500, max: 4000 }).map((tenths) => tenths / 10),
      isGood: fc.boolean(),
      output: fc.integer({ min: 0, max: 100 }),
      running: fc.integer({ min: 0, max: 1 }),
    }),
    { minLength: 1, maxLength: 60 },
  )
  .map((steps) => {
    let timeMs = NOON_MS;
    return steps.map((s): MadeSample => ({
      timeMs: (timeMs += s.stepMs),
      degC: s.degC,
      state: s.isGood ? readingState.good : readingState.aboveScale,
      outputPercent: s.output,
      setpointDegC: 180,
      running: s.running,
    }));
  });

describe('a minute digest', () => {
  test('holds what GROUP BY zone, minute would give', () => {
    const samples: MadeSample[] = [
      { timeMs: NOON_MS + 10_000, degC: 180, outputPercent: 30, setpointDegC: 180, running: 1 },
      { timeMs: NOON_MS + 30_000, degC: 184, outputPercent: 20, setpointDegC: 180, running: 1 },
      { timeMs: NOON_MS + 40_000, degC: 3276.7, state: readingState.aboveScale, outputPercent: 10, running: 0 },
      { timeMs: NOON_MS + 50_000, degC: 182, outputPercent: 0, setpointDegC: 180, running: 0 },
      { timeMs: NOON_MS + 180_000, degC: 181 },
    ];
    const digest = digestOf(samples);
    const held = digest.zones[0]!;
    expect([digest.startMs, digest.periodMs, digest.length]).toEqual([NOON_MS, SMALLEST_PERIOD_MS, 4]);
    expect([held.readingCount[0], held.badCount[0]]).toEqual([3, 1]);
    expect([held.firstDegC[0], held.lastDegC[0], held.minDegC[0], held.maxDegC[0]]).toEqual([180, 182, 180, 184]);
    expect(held.meanDegC[0]).toBeCloseTo(182, 5);
    expect(held.spreadDegC[0]).toBeCloseTo(Math.sqrt(8 / 3), 5); // STDDEV_POP of 180, 184, 182
    expect([held.outputPercent[0], held.setpointDegC[0], held.runningShare[0]]).toEqual([15, 180, 0.5]);
    expect(held.readingCount[1]).toBe(0);
    expect(held.meanDegC[1]).toBeNaN();
    expect(held.lastDegC[3]).toBe(181);
    expect(held.outputPercent[3]).toBeNaN();
  });

  test('is the same however the log is cut into blocks', () => {
    fc.assert(
      fc.property(anySamples, fc.array(fc.nat({ max: 60 }), { maxLength: 5 }), (samples, cuts) => {
        const within = cuts.filter((cut) => cut < samples.length);
        expectSame(digestOf(samples, within), digestOf(samples));
      }),
    );
  });

  test('of two halves, merged, is that of the whole', () => {
    fc.assert(
      fc.property(anySamples, fc.nat({ max: 60 }), (samples, cut) => {
        const merged = mergeDigests(digestOf(samples.slice(0, cut)), digestOf(samples.slice(cut)));
        expectSame(merged, digestOf(samples));
      }),
    );
  });

  test('is the same for files in any order', () => {
    const day = (n: number) =>
      Array.from({ length: 200 }, (_, i) => ({ timeMs: NOON_MS + n * 86_400_000 + i * 7000, degC: 150 + (i % 9) }));
    const inOrder = startDigest([zone]);
    const shuffled = startDigest([zone]);
    for (const n of [0, 1, 2]) inOrder.take(makeBlock(day(n)));
    for (const n of [2, 0, 1]) shuffled.take(makeBlock(day(n)));
    expectSame(shuffled.finish(), inOrder.finish());
  });

  test('doubles its period by merging when the budget would be passed, and says so', () => {
    const samples = Array.from({ length: 6000 }, (_, i) => ({ timeMs: NOON_MS + i * 60_000, degC: 100 + (i % 50) }));
    const fine = digestOf(samples);
    const coarse = digestOf(samples, [1000, 2000], 3 * 1024 * BYTES_PER_PLACE);
    expect(fine.periodMs).toBe(60_000);
    expect(coarse.periodMs).toBe(240_000);
    expectSame(coarse, coarsenDigest(fine, 4));
  });

  test('is the same for days in any order while its period doubles', () => {
    const day = (n: number) =>
      Array.from({ length: 500 }, (_, i) => ({
        timeMs: NOON_MS + n * 86_400_000 + i * 61_000,
        degC: 150 + ((n + i) % 9),
        // Comes late, so that the column begins when others are in use already.
        ...(n % 3 === 2 ? { outputPercent: 40 + (i % 5) } : {}),
      }));
    const days = [0, 1, 2, 3, 4, 5, 6];
    const digestIn = (order: readonly number[], budgetBytes?: number): PlantDigest => {
      const growing = startDigest([zone, makeZone({ index: 1 })], budgetBytes);
      for (const n of order) growing.take(makeBlock(day(n), n % 2));
      return growing.finish();
    };
    const fine = digestIn(days);
    fc.assert(
      fc.property(
        fc.shuffledSubarray(days, { minLength: days.length }),
        fc.integer({ min: 1, max: 12 }),
        (order, steps) => {
          const coarse = digestIn(order, 2 * steps * 1024 * BYTES_PER_PLACE);
          const merged = coarsenDigest(fine, coarse.periodMs / fine.periodMs);
          expect([coarse.startMs, coarse.length]).toEqual([merged.startMs, merged.length]);
          expect(countUnlike(coarse, merged)).toBe(0);
        },
      ),
      { numRuns: 30 },
    );
    expect(digestIn(days, 2 * 3 * 1024 * BYTES_PER_PLACE).periodMs).toBe(4 * SMALLEST_PERIOD_MS);
  });

  test('grows with the minutes logged and not with the years between them', () => {
    const week = (fromMs: number): MadeSample[] =>
      Array.from({ length: 10_080 }, (_, i) => ({ timeMs: fromMs + i * 60_000, degC: 100 + (i % 50) }));
    const parts = (years: number) => [...week(NOON_MS), ...week(NOON_MS + years * 365 * 86_400_000)];
    for (const years of [1, 20, 120]) {
      const digest = digestOf(parts(years), [4096, 10_080]);
      expect(digest.length).toBeLessThan(2 ** 17 + 2048);
      expect(digest.zones[0]!.readingCount.reduce((sum, count) => sum + count, 0)).toBe(20_160);
    }
    expect(digestOf(parts(0.2)).periodMs).toBe(SMALLEST_PERIOD_MS);
  });

  test('merges digests of different periods on the coarser one', () => {
    const samples = Array.from({ length: 600 }, (_, i) => ({ timeMs: NOON_MS + i * 20_000, degC: 100 + (i % 50) }));
    const merged = mergeDigests(coarsenDigest(digestOf(samples.slice(0, 300)), 2), digestOf(samples.slice(300)));
    expectSame(merged, coarsenDigest(digestOf(samples), 2));
  });

  test('of nothing has no places', () => {
    expect(digestOf([])).toMatchObject({ length: 0, periodMs: 60_000 });
    expect(startDigest([]).finish()).toMatchObject({ length: 0, zones: [] });
  });

  test('refuses a zone that is not in the list', () => {
    expect(() => startDigest([zone]).take(makeBlock([{ timeMs: 0, degC: 1 }], 4))).toThrow(/Zone index 4/);
  });

  test('refuses periods that do not divide each other', () => {
    const digest = digestOf([{ timeMs: NOON_MS, degC: 1 }]);
    expect(() => mergeDigests(coarsenDigest(digest, 2), coarsenDigest(digest, 3))).toThrow(/do not divide/);
    expect(() => coarsenDigest(digest, 1.5)).toThrow(/whole number/);
  });
});
