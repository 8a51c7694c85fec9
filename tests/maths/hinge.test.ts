import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitHinge } from '../../src/maths/hinge.js';
import { fitLine } from '../../src/maths/line-fit.js';
import { Random } from '../make/random.js';

function ramp(random: Random, knee: number, slope: number, sd: number): { x: number[]; y: number[] } {
  const x = Array.from({ length: 200 }, (_, i) => i / 10);
  return { x, y: x.map((at) => 100 + slope * Math.max(0, at - knee) + sd * random.gauss()) };
}

test('finds knee, level and slope of an exact ramp, between the points too', () => {
  const { x, y } = ramp(new Random(10), 7.234, 1.5, 0);
  const hinge = fitHinge(x, y);
  expect(hinge.knee).toBeCloseTo(7.234, 6);
  expect(hinge.level).toBeCloseTo(100, 8);
  expect(hinge.slope).toBeCloseTo(1.5, 8);
});

test('no knee on a fine grid fits better', () => {
  const point = fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 9 }));
  fc.assert(
    fc.property(fc.array(point, { minLength: 5, maxLength: 14 }), (points) => {
      const x = points.map(([at]) => at);
      const y = points.map(([, value]) => value);
      fc.pre(new Set(x).size > 2);
      const last = Math.max(...x);
      const first = Math.min(...x);
      for (let knee = first; knee < last - 0.01; knee += 0.05) {
        const { residualSquares } = fitLine(
          x.map((at) => Math.max(0, at - knee)),
          y,
        );
        expect(fitHinge(x, y).residualSquares).toBeLessThanOrEqual(residualSquares + 1e-7);
      }
    }),
    { numRuns: 30 },
  );
});

test('the knee range holds the true knee about 95 times in 100', () => {
  const random = new Random(11);
  let held = 0;
  for (let round = 0; round < 300; round++) {
    const { x, y } = ramp(random, 12, 0.5, 1);
    const { kneeLow, kneeHigh } = fitHinge(x, y);
    if (kneeLow <= 12 && 12 <= kneeHigh) held++;
  }
  expect(held / 300).toBeGreaterThan(0.91);
  expect(held / 300).toBeLessThan(0.99);
});

test('BIC speaks for a ramp where there is one, and mostly against it where there is none', () => {
  const random = new Random(12);
  expect(fitHinge(...pair(ramp(random, 8, 0.5, 1))).bicGain).toBeGreaterThan(10);
  const none = Array.from({ length: 100 }, () => fitHinge(...pair(ramp(random, 8, 0, 1))).bicGain);
  expect(none.filter((gain) => gain > 0).length).toBeLessThan(15);
});

test('clock times do not cost figures; order and gaps do not matter', () => {
  const minutes = [9, 8, 7, 6, 5, 4, 3, 2, 1, 0];
  const x = minutes.map((minute) => 1.7e12 + 60_000 * minute);
  const y = minutes.map((minute) => (minute === 1 ? NaN : Math.max(0, minute - 4)));
  const hinge = fitHinge(x, y);
  expect((hinge.knee - 1.7e12) / 60_000).toBeCloseTo(4, 6);
  expect(hinge.slope * 60_000).toBeCloseTo(1, 9);
});

test('too little to tell, and nothing to tell', () => {
  expect(fitHinge([1, 2, 3, 4, 5, 6], new Array<number>(6).fill(0.1)).bicGain).toBeLessThan(0);
  expect(fitHinge([1, 2, 3], [1, 2, 3]).knee).toBeNaN();
  expect(fitHinge([1, 1, 1, 1], [1, 2, 3, 4]).slope).toBeNaN();
});

function pair({ x, y }: { x: number[]; y: number[] }): [number[], number[]] {
  return [x, y];
}
