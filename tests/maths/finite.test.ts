import { expect, test } from 'vitest';
import { finitePairs, finiteValues, pairsByX, usablePlaces } from '../../src/maths/finite.js';

test('keeps what carries data, in order, and leaves the input as it was', () => {
  const input = [3, NaN, 1, Infinity, 2, -Infinity];
  expect([...finiteValues(input)]).toEqual([3, 1, 2]);
  expect(usablePlaces(input)).toEqual([0, 2, 4]);
  expect(input).toEqual([3, NaN, 1, Infinity, 2, -Infinity]);
});

test('takes typed arrays', () => {
  expect([...finiteValues(Float32Array.of(0.5, NaN, 2))]).toEqual([0.5, 2]);
});

test('keeps a pair only when both halves carry data', () => {
  const { x, y } = finitePairs([1, NaN, 3, 4], [10, 20, NaN, 40]);
  expect([[...x], [...y]]).toEqual([
    [1, 4],
    [10, 40],
  ]);
});

test('sorts pairs by x and keeps the order of equal x', () => {
  const { x, y } = pairsByX([2, 1, 2, NaN], [20, 10, 21, 0]);
  expect([[...x], [...y]]).toEqual([
    [1, 2, 2],
    [10, 20, 21],
  ]);
});

test('gives nothing for nothing', () => {
  expect(finiteValues([NaN]).length).toBe(0);
  expect(pairsByX([], []).x.length).toBe(0);
});
