import { DateTime } from 'luxon';
import { describe, expect, test } from 'vitest';
import { usualBreaks } from '../../src/downtime/usual-breaks.js';
import { totalLength, type Interval } from '../../src/maths/intervals.js';

// Invented shifts; the rule itself is own choice (src/downtime/downtime.md says so).
const zone = 'Europe/Paris';
const minute = 60_000;

/** From–to on the clock of a day, days counted from Monday 19 October 2026; the clock changes on Sunday the 25th. */
function at(day: number, from: string, to: string): Interval {
  const time = (clock: string) => DateTime.fromISO(`2026-10-19T${clock}`, { zone }).plus({ days: day }).toMillis();
  return { start: time(from), end: time(to) };
}
const workdays = [0, 1, 2, 3, 4, 7, 8, 9, 10, 11];
const production = workdays.map((day) => at(day, '06:00', '22:00'));

describe('times of day at which a machine usually stands', () => {
  test('are found on both sides of a clock change, with the ragged ends of each day', () => {
    const stood = workdays.map((day, i) => {
      const { start, end } = at(day, '09:30', '09:50');
      return { start: start - (i % 3) * minute, end: end + (i % 2) * minute };
    });
    const { clock, taken } = usualBreaks(production, stood, [], zone);
    expect(clock).toEqual([{ fromMinute: 570, toMinute: 590 }]);
    expect(totalLength(taken)).toBe(totalLength(stood));
  });

  test('end with the habit: what is stood beyond five minutes more is no break', () => {
    const stood = [...workdays.slice(0, 9).map((day) => at(day, '09:30', '09:50')), at(11, '09:30', '10:40')];
    const { taken } = usualBreaks(production, stood, [], zone);
    expect(totalLength(taken)).toBe((9 * 20 + 25) * minute);
  });

  test('are worked through now and then, which takes nothing from that day', () => {
    const stood = workdays.slice(0, 8).map((day) => at(day, '12:00', '12:30'));
    const { clock, taken } = usualBreaks(production, stood, [], zone);
    expect(clock).toEqual([{ fromMinute: 720, toMinute: 750 }]);
    expect(totalLength(taken)).toBe(8 * 30 * minute);
  });

  test('are not told from four days, however alike', () => {
    const stood = workdays.slice(0, 4).map((day) => at(day, '12:00', '12:30'));
    expect(usualBreaks(production.slice(0, 4), stood, [], zone).clock).toEqual([]);
  });

  test('are not told where a cause is known: a fault that comes each morning stays lost time', () => {
    const stood = workdays.map((day) => at(day, '06:40', '07:00'));
    expect(usualBreaks(production, stood, stood, zone)).toEqual({ clock: [], taken: [] });
  });

  test('are not told of a machine that hardly runs', () => {
    const stood = workdays.flatMap((day) => [at(day, '06:00', '13:00'), at(day, '13:30', '22:00')]);
    const { clock } = usualBreaks(production, stood, [], zone);
    expect(clock).toEqual([]);
  });

  test('are not told of stops at any time', () => {
    const stood = workdays.flatMap((day, i) =>
      Array.from({ length: 8 }, (_, k) => {
        const start = at(day, '06:00', '06:01').start + ((i * 7919 + k * 104_729) % 900) * minute;
        return { start, end: start + 12 * minute };
      }),
    );
    expect(usualBreaks(production, stood, [], zone).clock).toEqual([]);
  });
});
