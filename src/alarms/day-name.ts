import { DateTime } from 'luxon';
import type { PlantFile } from '../model/plant-file.js';

/**
 * Names the day of a moment on the plant's clock, as in 2026-01-31. Each day is looked up once as long as times come in
 * order: the calendar of a time zone costs more than all else that is done with an alarm.
 */
export function dayNamer({ timezone }: PlantFile): (timeMs: number) => string {
  const zone = timezone ?? 'utc';
  let day = { fromMs: Infinity, toMs: -Infinity, name: '' };
  return (timeMs) => {
    if (!(timeMs >= day.fromMs && timeMs < day.toMs)) {
      const start = DateTime.fromMillis(timeMs, { zone }).startOf('day');
      const toMs = start.plus({ days: 1 }).toMillis();
      day = { fromMs: start.toMillis(), toMs, name: start.toFormat('yyyy-MM-dd') };
    }
    return day.name;
  };
}
