import { expect, test } from 'vitest';
import { highest, lowest } from '../../src/maths/extremes.js';

test('lowest and highest are those of Math.min and Math.max', () => {
  for (const values of [[], [3], [2, -7, 5, 0], [1, NaN, 2], [Infinity, -Infinity]]) {
    expect(lowest(values)).toBe(Math.min(...values));
    expect(highest(values)).toBe(Math.max(...values));
  }
});

test('a million values are no stack of arguments', () => {
  const values = Array.from({ length: 1_000_000 }, (_, i) => (i * 7919) % 1_000_003);
  expect(lowest(values)).toBe(0);
  expect(highest(values)).toBe(1_000_002);
  expect(highest(Float64Array.from(values))).toBe(1_000_002);
});
