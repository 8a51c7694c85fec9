import { expect, test } from 'vitest';
import { cusumRunLength } from '../../src/maths/cusum-run-length.js';
import { cusum } from '../../src/maths/cusum.js';
import { firstSignal } from './first-signal.js';
import { Random } from '../make/random.js';

// Montgomery & Runger, Applied Statistics and Probability for Engineers, 3rd ed., Table 16-9, K = 1/2.
const shifts = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3, 4];
const limit4 = [168, 74.2, 26.6, 13.3, 8.38, 4.75, 3.34, 2.62, 2.19, 1.71];
const limit5 = [465, 139, 38.0, 17.0, 10.4, 5.75, 4.01, 3.11, 2.57, 2.01];

test.each(shifts.map((shift, i) => [shift, limit4[i]!, limit5[i]!]))('table row of shift %f', (shift, at4, at5) => {
  expect(Math.abs(cusumRunLength(0.5, 4, shift) / at4 - 1)).toBeLessThan(0.004); // three printed figures
  expect(Math.abs(cusumRunLength(0.5, 5, shift) / at5 - 1)).toBeLessThan(0.004);
});

test('the chart itself runs as long as the equation says', () => {
  const random = new Random(5);
  const rounds = 1000;
  let total = 0;
  for (let round = 0; round < rounds; round++) {
    const values = Array.from({ length: 200 }, () => 1 + random.gauss());
    total += firstSignal(cusum(values, { target: 0, slack: 0.5 }), 4) + 1;
  }
  expect(total / rounds).toBeGreaterThan(8); // 8.38, standard error about 0.13
  expect(total / rounds).toBeLessThan(8.8);
});

test('hopelessly long is Infinity, no number is NaN', () => {
  expect(cusumRunLength(3, 20, 0)).toBe(Infinity);
  expect(cusumRunLength(NaN, 4, 0)).toBeNaN();
});
