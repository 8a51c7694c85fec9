import { expect, test } from 'vitest';
import { usualTimeOfDayMs } from '../../src/downtime/usual-clock.js';

const HOUR_MS = 3_600_000;
const at = (day: number, hours: number): number => Date.UTC(2026, 2, day) + hours * HOUR_MS;

test('is the median of the times of day', () => {
  expect(usualTimeOfDayMs([at(2, 6), at(3, 6.5), at(4, 7)])).toBe(6.5 * HOUR_MS);
  expect(usualTimeOfDayMs([])).toBeNaN();
});

test('knows that midnight parts no times', () => {
  expect(usualTimeOfDayMs([at(2, 23.9), at(4, 0.1), at(4, 23.8), at(6, 0.2)])).toBeCloseTo(0, 6);
  expect(usualTimeOfDayMs([at(2, 0.1), at(2, 23.9), at(3, 23.8)])).toBe(23.9 * HOUR_MS);
});
