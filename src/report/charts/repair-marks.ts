import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackMarks } from '../embed/pack-lists.js';
import type { Look } from './look.js';

/** Repairs as dotted rules with a diamond at the foot: what was measured before one is not of the sensor after it. */
export function repairMarks({ repairs }: ZoneChartData, look: Look, heightPx: number): object[] {
  const values = unpackMarks(repairs).map(({ fromMs, says }) => ({ t: fromMs, says }));
  if (values.length === 0) return [];
  const x = { field: 't', type: 'temporal', scale: { type: 'utc' } };
  const tooltip = [
    { field: 't', type: 'temporal', title: 'Repair', format: '%a %-d %b %H:%M' },
    { field: 'says', type: 'nominal', title: 'Done' },
  ];
  return [
    { data: { values }, mark: { type: 'rule', color: look.ink, strokeDash: [2, 3] }, encoding: { x, tooltip } },
    {
      data: { values },
      mark: { type: 'point', shape: 'diamond', filled: true, size: 110, color: look.ink, opacity: 1 },
      encoding: { x, y: { value: heightPx - 8 }, tooltip },
    },
  ];
}
