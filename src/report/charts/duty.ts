import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackPoints } from '../embed/pack-lists.js';
import { chartConfig, dayAxis, inUnit, unitText, type Look } from './look.js';
import { repairMarks } from './repair-marks.js';

const heightPx = 190;

/** From this many points on, a line of daily medians shows what the cloud hides. */
const cloudPoints = 20;

/** Output beyond what past and neighbours explain, one point per settled stretch, and the median of each day. */
export function dutyChart(data: ZoneChartData, look: Look): TopLevelSpec {
  const values = unpackPoints(data.duty).map(({ timeMs, residualDegC, residualPercent }) => ({
    t: timeMs,
    residual: inUnit(residualDegC, 'difference', look),
    percent: residualPercent,
  }));
  const time = { field: 't', type: 'temporal', scale: { type: 'utc' } };
  const x = { ...time, axis: dayAxis(look) };
  return {
    width: look.widthPx,
    height: heightPx,
    data: { values },
    layer: [
      {
        data: { values: [{}] },
        mark: { type: 'rule', color: look.ink, strokeWidth: 1 },
        encoding: { y: { datum: 0 } },
      },
      {
        mark: { type: 'point', shape: 'square', filled: true, size: 22, opacity: 0.55, color: look.output },
        encoding: {
          x,
          y: { field: 'percent', type: 'quantitative', title: 'Output beyond, % of full' },
          tooltip: [
            { field: 't', type: 'temporal', title: 'Stretch', format: '%a %-d %b %H:%M' },
            { field: 'percent', type: 'quantitative', title: 'Output beyond, % of full', format: '+.2f' },
            {
              field: 'residual',
              type: 'quantitative',
              title: `If the sensor explains it, ${unitText(look)}`,
              format: '+.2f',
            },
          ],
        },
      },
      ...(values.length >= cloudPoints ? [dayMedians(look)] : []),
      ...repairMarks(data, look, heightPx),
    ],
    config: chartConfig(look),
  } as TopLevelSpec;
}

function dayMedians(look: Look) {
  return {
    transform: [
      { timeUnit: 'utcyearmonthdate', field: 't', as: 'day' },
      { aggregate: [{ op: 'median', field: 'percent', as: 'middle' }], groupby: ['day'] },
      { calculate: 'toNumber(datum.day) + 43200000', as: 'noon' },
    ],
    mark: {
      type: 'line',
      color: look.ink,
      strokeWidth: 2,
      point: { shape: 'circle', size: 45, filled: true, color: look.ink },
    },
    encoding: {
      x: { field: 'noon', type: 'temporal', scale: { type: 'utc' } },
      y: { field: 'middle', type: 'quantitative' },
      tooltip: [
        { field: 'day', type: 'temporal', timeUnit: 'utcyearmonthdate', title: 'Day', format: '%a %-d %b' },
        { field: 'middle', type: 'quantitative', title: 'Middle of the day, % of full', format: '+.2f' },
      ],
    },
  };
}
