import { expect, test } from 'vitest';
import { minimise } from '../../src/maths/minimise.js';

test('finds the lower of two dips', () => {
  const found = minimise((x) => (x * x - 1) ** 2 + 0.1 * x, -2, 2, 20);
  // 4x³ − 4x + 0.1 = 0 has its lowest root at −1.0124
  expect(found.at).toBeCloseTo(-1.0124, 3);
  expect(found.isAtEdge).toBe(false);
});

test('tells that the least value lies at an end', () => {
  expect(minimise((x) => x, 0, 1, 10)).toMatchObject({ isAtEdge: true });
  expect(minimise((x) => -x, 0, 1, 10).at).toBeCloseTo(1, 6);
});

test('a function without numbers has no minimum', () => {
  expect(minimise(() => NaN, 0, 1, 4).value).toBeNaN();
});
