import { expect, test } from 'vitest';
import { runsTest, signTest } from '../../src/maths/runs-test.js';

test('sign test: 9 of 10 above is 22 of 1024 both ways', () => {
  const values = [1, 2, 3, 4, 5, 6, 7, 8, 9, -1, 0, NaN];
  expect(signTest(values)).toEqual({ above: 9, below: 1, pTwoSided: expect.closeTo(22 / 1024, 12) });
  expect(signTest([0, 0]).pTwoSided).toBe(1);
});

test('expected runs and their spread are those of all orders', () => {
  // 3 above and 4 below: all 35 orders
  const orders = choices(7, 3);
  const tests = orders.map((above) =>
    runsTest(
      Array.from({ length: 7 }, (_, i) => (above.includes(i) ? 1 : -1)),
      0,
    ),
  );
  const mean = tests.reduce((sum, { runs }) => sum + runs, 0) / tests.length;
  const variance = tests.reduce((sum, { runs }) => sum + (runs - mean) ** 2, 0) / tests.length;
  expect(tests[0]!.expectedRuns).toBeCloseTo(mean, 10);
  const { runs, z } = tests[0]!;
  expect(z).toBeCloseTo((runs - mean) / Math.sqrt(variance), 10);
});

test('a slow wave has too few runs, a zigzag too many', () => {
  const wave = Array.from({ length: 60 }, (_, i) => Math.sin(i / 6));
  expect(runsTest(wave).z).toBeLessThan(-3);
  expect(
    runsTest(
      wave.map((_, i) => (i % 2 === 0 ? 1 : -1)),
      0,
    ).pTwoSided,
  ).toBeLessThan(1e-6);
});

test('cannot tell without two sides', () => {
  expect(runsTest([1, 2, 3], 0).pTwoSided).toBeNaN();
  expect(runsTest([]).z).toBeNaN();
});

function choices(places: number, count: number, from = 0): number[][] {
  if (count === 0) return [[]];
  const starts = Array.from({ length: places - from }, (_, i) => from + i);
  return starts.flatMap((first) => choices(places, count - 1, first + 1).map((rest) => [first, ...rest]));
}
