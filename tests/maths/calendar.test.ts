import { expect, test } from 'vitest';
import { calendarOf } from '../../src/maths/calendar.js';

const hourMs = 3_600_000;
const at = (text: string) => Date.parse(text);

test('days are those of the clock: 23:30 UTC is the next day in Oslo', () => {
  expect(calendarOf('Europe/Oslo', 'day')(at('2026-01-30T23:30:00Z')).name).toBe('2026-01-31');
  expect(calendarOf('utc', 'day')(at('2026-01-30T23:30:00Z')).name).toBe('2026-01-30');
});

test('the days on which clocks change have 23 and 25 hours (EU: last Sundays of March and October)', () => {
  const dayAt = calendarOf('Europe/Oslo', 'day');
  const hours = (text: string) => (dayAt(at(text)).toMs - dayAt(at(text)).fromMs) / hourMs;
  expect([hours('2026-03-29T12:00:00Z'), hours('2026-10-25T12:00:00Z'), hours('2026-06-01T12:00:00Z')]).toEqual([
    23, 25, 24,
  ]);
});

test('weeks are those of ISO 8601: the first of January 2027, a Friday, lies in week 53 of 2026', () => {
  const weekAt = calendarOf('utc', 'week');
  const week = weekAt(at('2027-01-01T00:00:00Z'));
  expect(week).toEqual({ fromMs: at('2026-12-28'), toMs: at('2027-01-04'), name: '2026-W53' });
});

test('times in any order get the span they lie in, its first moment included and its last not', () => {
  const dayAt = calendarOf('utc', 'day');
  const asked = ['2026-01-02', '2026-01-01T23:59:59.999Z', '2026-01-02T12:00Z', '2025-12-31T00:00Z', '2026-01-02'];
  expect(asked.map((text) => dayAt(at(text)).name)).toEqual([
    '2026-01-02',
    '2026-01-01',
    '2026-01-02',
    '2025-12-31',
    '2026-01-02',
  ]);
});
