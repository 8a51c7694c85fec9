import { expect, test } from 'vitest';
import { evenOverMovingRatio } from '../../../src/detect/shared/opens/even-or-moving.js';

const counts = (runningCount: number, stoppedCount: number, runningHours: number, stoppedHours: number) => ({
  runningCount,
  stoppedCount,
  runningHours,
  stoppedHours,
});

test('is the ratio of two averaged binomial likelihoods', () => {
  // One open at rest in equal hours: mean of r/(1+r) over ½, 1, 2 is 0.5; over 0.002, 0.02, 0.05, 0.1 it is 0.040033.
  expect(evenOverMovingRatio([counts(0, 1, 10, 10)])).toBeCloseTo(0.5 / 0.040033, 3);
  expect(evenOverMovingRatio([counts(1, 0, 10, 10)])).toBeCloseTo(0.5 / 0.959967, 3);
});

test('one open in a short stop says little, many running hours without one at rest say more with every open', () => {
  expect(evenOverMovingRatio([counts(20, 0, 50, 0.5)])).toBeGreaterThan(0.5);
  expect(evenOverMovingRatio([counts(20, 0, 50, 20)])).toBeLessThan(0.05);
  expect(evenOverMovingRatio([counts(40, 0, 50, 20)])).toBeLessThan(evenOverMovingRatio([counts(20, 0, 50, 20)]));
});

test('parts with hours of their own count together', () => {
  const part = counts(0, 1, 10, 10);
  const squares = [0.002, 0.02, 0.05, 0.1].map((r) => (r / (1 + r)) ** 2);
  const even = [0.5, 1, 2].map((r) => (r / (1 + r)) ** 2);
  const mean = (of: readonly number[]) => of.reduce((sum, x) => sum + x, 0) / of.length;
  expect(evenOverMovingRatio([part, part])).toBeCloseTo(mean(even) / mean(squares), 6);
});

test('tells nothing where nothing was watched, and stays finite', () => {
  expect(evenOverMovingRatio([counts(0, 5, 0, 10)])).toBe(1);
  expect(evenOverMovingRatio([counts(0, 0, 0, 0)])).toBe(1);
  expect(evenOverMovingRatio([])).toBe(1);
  expect(evenOverMovingRatio([counts(0, 500, 10, 10)])).toBe(1e6);
});
