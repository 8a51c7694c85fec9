import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { chartConfig, dayAxis, type Look } from './look.js';

export const movingText = 'machine running';
export const standingText = 'machine stopped';

/** Opens per day, filled while the machine ran, hollow while it stood. */
export function opensChart({ opens, startMs, endMs }: ZoneChartData, look: Look): TopLevelSpec {
  const values = opens.flatMap(({ day, running, stopped }) => [
    { day, when: movingText, opens: running },
    { day, when: standingText, opens: stopped },
  ]);
  const both = [movingText, standingText];
  return {
    width: look.widthPx,
    height: 190,
    data: { values },
    mark: { type: 'bar', strokeWidth: 1.6, width: { band: 0.7 } },
    encoding: {
      x: {
        field: 'day',
        type: 'temporal',
        timeUnit: 'utcyearmonthdate',
        scale: { type: 'utc', domain: [startMs, endMs] },
        axis: dayAxis(look),
      },
      y: {
        field: 'opens',
        type: 'quantitative',
        title: 'Opens a day',
        stack: true,
        axis: { tickMinStep: 1, format: 'd' },
      },
      fill: {
        field: 'when',
        type: 'nominal',
        scale: { domain: both, range: [look.fault, look.paper] },
        legend: { title: null },
      },
      stroke: { value: look.fault },
      tooltip: [
        { field: 'day', type: 'temporal', timeUnit: 'utcyearmonthdate', title: 'Day', format: '%a %-d %b' },
        { field: 'when', type: 'nominal', title: 'While' },
        { field: 'opens', type: 'quantitative', title: 'Opens' },
      ],
    },
    config: chartConfig(look),
  } as TopLevelSpec;
}
