import { DateTime } from 'luxon';
import type { PlantFile } from '../model/plant-file.js';
import { MINUTE_MS } from '../model/time-units.js';

/**
 * Names the shift of a moment on the plant's clock: the shifts of plant.yaml by their hours, else the three eight-hour
 * shifts from 06:00, 14:00 and 22:00 (common practice). Weekdays are not looked at: a shift is its hours.
 */
export function shiftNamer({ shifts, timezone }: PlantFile): (timeMs: number) => string {
  const zone = timezone ?? 'utc';
  const hours = shifts?.length
    ? shifts.map(({ from, to }) => ({ from, to }))
    : [
        { from: '06:00', to: '14:00' },
        { from: '14:00', to: '22:00' },
        { from: '22:00', to: '06:00' },
      ];
  let known = { minute: NaN, name: '' }; // shifts change on whole minutes, and many alarms come in one
  return (timeMs) => {
    const minute = Math.floor(timeMs / MINUTE_MS);
    if (minute !== known.minute) known = { minute, name: nameAt(DateTime.fromMillis(timeMs, { zone })) };
    return known.name;
  };

  function nameAt(now: DateTime): string {
    const minute = now.hour * 60 + now.minute;
    const shift = hours.find(({ from, to }) => holds(minuteOf(from), minuteOf(to), minute));
    return shift ? `${shift.from}–${shift.to}` : 'outside the shifts';
  }
}

function minuteOf(clock: string): number {
  const [hour = 0, minute = 0] = clock.split(/[:.]/u).map(Number);
  return hour * 60 + minute;
}

function holds(from: number, to: number, minute: number): boolean {
  return from < to ? minute >= from && minute < to : minute >= from || minute < to;
}
