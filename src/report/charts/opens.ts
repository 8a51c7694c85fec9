import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { chartConfig, dayAxis, type Look } from './look.js';
import { DAY_MS } from '../../model/time-units.js';

const movingText = 'machine running';
const standingText = 'machine stopped';

/** Shares of a day at which its bar begins and ends. */
const barFrom = 0.15;
const barTo = 0.85;

/** Opens per day, filled while the machine ran, hollow while it stood. */
export function opensChart({ opens, startMs, endMs }: ZoneChartData, look: Look): TopLevelSpec {
  const values = opens.flatMap(({ day, running, stopped }) => {
    const at = Date.parse(`${day}T00:00:00Z`);
    const bar = { day: at, from: at + barFrom * DAY_MS, to: at + barTo * DAY_MS };
    return [
      { ...bar, when: movingText, low: 0, high: running, opens: running },
      { ...bar, when: standingText, low: running, high: running + stopped, opens: stopped },
    ];
  });
  const both = [movingText, standingText];
  return {
    width: look.widthPx,
    height: 190,
    data: { values: values.filter(({ opens: count }) => count > 0) },
    mark: { type: 'rect', strokeWidth: 1.6 },
    encoding: {
      x: {
        field: 'from',
        type: 'temporal',
        scale: { type: 'utc', domainMin: { expr: `${startMs}` }, domainMax: { expr: `${endMs}` }, nice: false },
        axis: dayAxis(look),
      },
      x2: { field: 'to' },
      y: {
        field: 'low',
        type: 'quantitative',
        title: 'Opens a day',
        scale: { zero: true },
        axis: { tickMinStep: 1, format: 'd' },
      },
      y2: { field: 'high' },
      fill: {
        field: 'when',
        type: 'nominal',
        scale: { domain: both, range: [look.fault, look.paper] },
        legend: { title: null },
      },
      stroke: { value: look.fault },
      tooltip: [
        { field: 'day', type: 'temporal', title: 'Day', format: '%a %-d %b' },
        { field: 'when', type: 'nominal', title: 'While' },
        { field: 'opens', type: 'quantitative', title: 'Opens' },
      ],
    },
    config: chartConfig(look),
  } as TopLevelSpec;
}
