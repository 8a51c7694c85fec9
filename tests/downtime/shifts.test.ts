import { expect, test } from 'vitest';
import { shiftIntervals } from '../../src/downtime/shifts.js';
import { DAY_MS, HOUR_MS, MONDAY_MS } from '../make/zone-log.js';

const week = { start: MONDAY_MS, end: MONDAY_MS + 7 * DAY_MS };
const hoursOf = (shifts: readonly { days: readonly number[]; from: string; to: string }[], timezone?: string) =>
  shiftIntervals({ zones: [], shifts, ...(timezone ? { timezone } : {}) }, week)!
    .filter(({ start }) => start >= week.start && start < week.end)
    .map(({ start, end }) => [(start - MONDAY_MS) / HOUR_MS, (end - MONDAY_MS) / HOUR_MS]);

test('a shift lies on its days', () => {
  expect(hoursOf([{ days: [2, 6], from: '06:00', to: '14:00' }])).toEqual([
    [30, 38],
    [126, 134],
  ]);
});

test('one that ends before it begins goes over midnight, and shifts that touch are one stretch', () => {
  const days = [3];
  const early = { days, from: '14:00', to: '22:00' };
  expect(hoursOf([early, { days, from: '22:00', to: '06:00' }])).toEqual([[62, 78]]);
});

test('clocks are those of the plant', () => {
  expect(hoursOf([{ days: [1], from: '06:00', to: '14:00' }], 'Europe/Oslo')).toEqual([[5, 13]]); // winter: UTC + 1 h
});

test('no shifts, none told', () => {
  expect(shiftIntervals({ zones: [] }, week)).toBeNull();
});
