import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { meanTimeBetween } from '../../src/maths/mean-time-between.js';
import { sharedData } from '../make/shared-data.js';

// NIST/SEMATECH e-Handbook 8.4.5.1: 800 h, 2 failures, 90 %: MTBF 400 h, 127 to 2251 h (figures from memory, recomputed).
test('the handbook example', () => {
  const { mean, low, high } = meanTimeBetween(800, 2, 0.9);
  expect(mean).toBe(400);
  expect(low).toBeCloseTo(127.069, 3);
  expect(high).toBeCloseTo(2251.229, 3);
});

test('no failures: lower limit T/(−ln α) alone', () => {
  const none = meanTimeBetween(800, 0, 0.9);
  expect(none.low).toBeCloseTo(347.436, 3);
  expect([none.mean, none.high]).toEqual([NaN, Infinity]);
  expect(meanTimeBetween(800, 0, 0.95).low).toBeCloseTo(267.047, 3);
});

test('factors at 90 % for 1, 3, 5 and 10 failures (recomputed from the handbook formula)', () => {
  const factors = [
    [1, 0.2108, 19.496],
    [3, 0.3869, 3.669],
    [5, 0.4756, 2.538],
    [10, 0.5895, 1.843],
  ] as const;
  for (const [failures, low, high] of factors) {
    const limits = meanTimeBetween(failures, failures, 0.9);
    expect(limits.low).toBeCloseTo(low, 4);
    expect(limits.high).toBeCloseTo(high, 3);
  }
});

const examples = sharedData('worked-examples.json');
test.skipIf(!examples)('all tabled factors (skipped where ../shared/data is absent)', () => {
  const { factors } = JSON.parse(readFileSync(examples!, 'utf8'))['mtbf_time_censored_factors'];
  for (const [events, rows] of Object.entries<Record<string, [number, number]>>(factors)) {
    for (const [percent, [low, high]] of Object.entries(rows)) {
      const limits = meanTimeBetween(Number(events), Number(events), Number(percent) / 100);
      expect(limits.low, `${events} at ${percent} %`).toBeCloseTo(low, 4);
      expect(limits.high, `${events} at ${percent} %`).toBeCloseTo(high, 3);
    }
  }
});

test('nothing watched', () => {
  expect(meanTimeBetween(0, 0).low).toBeNaN();
  expect(meanTimeBetween(5, -1).mean).toBeNaN();
});
