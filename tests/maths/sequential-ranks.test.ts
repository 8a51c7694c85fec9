import fc from 'fast-check';
import { expect, test } from 'vitest';
import { normalQuantile } from '../../src/maths/normal.js';
import { sequentialRankScores } from '../../src/maths/sequential-ranks.js';
import { Random } from '../make/random.js';

test('worked by hand: ranks 1 of 1, 2 of 2, 1 of 3, the middle of 4', () => {
  const scores = sequentialRankScores([5, 9, 1, NaN, 5]);
  const shares = [0.5, 0.75, 1 / 6, NaN, 0.5]; // two equal values share ranks 2 and 3 of 4
  expect(Array.from(scores)).toEqual(shares.map((share) => (share ? expect.closeTo(normalQuantile(share), 12) : NaN)));
});

test('only the order counts', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: -50, max: 50 })), (values) => {
      expect(sequentialRankScores(values.map((value) => value ** 3 + value))).toEqual(sequentialRankScores(values));
    }),
  );
});

test('later scores of any distribution have mean 0 and a spread near 1', () => {
  const random = new Random(9);
  const late = Array.from({ length: 60 }, () =>
    sequentialRankScores(Array.from({ length: 120 }, () => Math.exp(2 * random.gauss()))).subarray(40),
  ).flatMap((scores) => Array.from(scores));
  const mean = late.reduce((sum, score) => sum + score, 0) / late.length;
  const sd = Math.sqrt(late.reduce((sum, score) => sum + (score - mean) ** 2, 0) / late.length);
  expect(Math.abs(mean)).toBeLessThan(0.05);
  expect(sd).toBeGreaterThan(0.93);
  expect(sd).toBeLessThan(1.02);
});
