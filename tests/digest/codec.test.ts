import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { startDigest } from '../../src/digest/build-digest.js';
import { decodeDigest, encodeDigest } from '../../src/digest/codec.js';
import { emptyZoneDigest, numberColumns } from '../../src/digest/zone-digest.js';
import type { PlantDigest } from '../../src/model/digest.js';
import { LogProblem } from '../../src/model/problem.js';
import { makeBlock, makeZone } from '../make/blocks.js';

const anyNumber = fc.oneof(
  fc.constant(NaN),
  fc.integer({ min: -400_00, max: 40_000_00 }).map((n) => n / 100),
);
const anyDigest: fc.Arbitrary<PlantDigest> = fc
  .tuple(fc.nat({ max: 20 }), fc.nat({ max: 3 }), fc.infiniteStream(anyNumber), fc.infiniteStream(fc.nat(65535)))
  .map(([length, zoneCount, numbers, counts]) => {
    const zones = Array.from({ length: zoneCount }, () => {
      const zone = emptyZoneDigest(length);
      for (let i = 0; i < length; i++) {
        zone.readingCount[i] = counts.next().value!;
        zone.badCount[i] = counts.next().value!;
        for (const column of numberColumns) zone[column][i] = numbers.next().value!;
        // No reading in the place means no mean and then no first, last, min and max either.
        const isEmpty = Number.isNaN(zone.meanDegC[i]!);
        if (isEmpty) for (const column of numberColumns.slice(0, 4)) zone[column][i] = NaN;
      }
      return zone;
    });
    return { startMs: Date.UTC(2026, 0, 1), periodMs: 60_000, length, zones };
  });

function bytesOfLog(): Uint8Array {
  const growing = startDigest([makeZone()]);
  growing.take(makeBlock(Array.from({ length: 50 }, (_, i) => ({ timeMs: i * 30_000, degC: 180 + i / 7 }))));
  return encodeDigest(growing.finish());
}

describe('the stored digest', () => {
  test('gives back every count exactly and every number to a hundredth', () => {
    fc.assert(
      fc.property(anyDigest, (digest) => {
        const back = decodeDigest(encodeDigest(digest), 'history/a.digest');
        expect([back.startMs, back.periodMs, back.length, back.zones.length]).toEqual([
          digest.startMs,
          digest.periodMs,
          digest.length,
          digest.zones.length,
        ]);
        digest.zones.forEach((zone, z) => {
          expect(back.zones[z]!.readingCount).toEqual(zone.readingCount);
          expect(back.zones[z]!.badCount).toEqual(zone.badCount);
          for (const column of numberColumns) {
            zone[column].forEach((value, i) => {
              const stored = back.zones[z]![column][i]!;
              if (Number.isNaN(value)) expect(stored).toBeNaN();
              else expect(Math.abs(stored - value)).toBeLessThan(0.011);
            });
          }
        });
      }),
    );
  });

  test('names the file for bytes that are no digest, cut short, damaged or of another version', () => {
    const bytes = bytesOfLog();
    const newer = bytes.slice();
    newer[4] = 9;
    const tooLong = bytes.slice();
    new DataView(tooLong.buffer).setUint32(21, 0xffffffff, true);
    for (const broken of [new Uint8Array(0), new TextEncoder().encode('{"schema":1}'.repeat(9)), newer, tooLong]) {
      expect(() => decodeDigest(broken, 'history/a.digest')).toThrow(LogProblem);
      expect(() => decodeDigest(broken, 'history/a.digest')).toThrow(/^history\/a\.digest: The file is/);
    }
    for (const length of [30, bytes.length - 20]) {
      expect(() => decodeDigest(bytes.subarray(0, length), 'history/a.digest')).toThrow(LogProblem);
    }
  });
});
