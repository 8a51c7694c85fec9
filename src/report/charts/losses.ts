import type { TopLevelSpec } from 'vega-lite';
import type { DowntimeBucket } from '../../model/downtime-findings.js';
import type { PlantChartData } from '../embed/chart-data.js';
import { bucketWords } from '../text/words.js';
import { chartConfig, type Look } from './look.js';

/** More bars than this are not read; the table beside the chart has them all. */
const mostBars = 12;

/** Filled, striped by its outline, or hollow: a bucket can be told without its colour. */
function bucketScale(look: Look) {
  const buckets: readonly DowntimeBucket[] = ['zone-fault', 'other-cause', 'unknown'];
  return {
    fill: { domain: buckets.map((bucket) => bucketWords[bucket]), range: [look.fault, look.running, look.paper] },
    names: (bucket: string): string => bucketWords[bucket as DowntimeBucket] ?? bucket,
  };
}

/** Lost minutes by cause, largest first, with the running share of the whole. */
export function paretoChart({ pareto }: PlantChartData, look: Look): TopLevelSpec {
  const { fill, names } = bucketScale(look);
  const total = pareto.reduce((sum, { minutes }) => sum + minutes, 0);
  let sofar = 0;
  const values = pareto.slice(0, mostBars).map(({ name, bucket, minutes }) => {
    sofar += minutes;
    const share = total > 0 ? (100 * sofar) / total : 0;
    return { name, bucket: names(bucket), minutes, label: `${Math.round(minutes)} (${Math.round(share)} %)`, share };
  });
  const y = {
    field: 'name',
    type: 'nominal',
    sort: null,
    axis: { title: null, labelLimit: look.widthPx / 3 },
  };
  return {
    width: look.widthPx,
    height: { step: 30 },
    data: { values },
    layer: [
      {
        mark: { type: 'bar', strokeWidth: 1.4, height: { band: 0.75 } },
        encoding: {
          y,
          x: { field: 'minutes', type: 'quantitative', title: 'Lost, minutes' },
          fill: {
            field: 'bucket',
            type: 'nominal',
            scale: fill,
            legend: { title: null, columns: look.widthPx < 500 ? 1 : 3, labelLimit: 300 },
          },
          stroke: { value: look.ink },
          tooltip: [
            { field: 'name', type: 'nominal', title: 'Cause' },
            { field: 'bucket', type: 'nominal', title: 'Kind' },
            { field: 'minutes', type: 'quantitative', title: 'Minutes', format: '.0f' },
            { field: 'share', type: 'quantitative', title: 'With those above, %', format: '.0f' },
          ],
        },
      },
      {
        mark: { type: 'text', align: 'left', dx: 5 },
        encoding: {
          y,
          x: { field: 'minutes', type: 'quantitative' },
          text: { field: 'label', type: 'nominal' },
        },
      },
    ],
    config: chartConfig(look),
  } as TopLevelSpec;
}

/** Alarms per day. */
export function alarmsChart({ alarmsByDay }: PlantChartData, look: Look): TopLevelSpec {
  return {
    width: look.widthPx,
    height: 150,
    data: { values: alarmsByDay as { day: string; count: number }[] },
    mark: { type: 'bar', color: look.alarm, width: { band: 0.75 } },
    encoding: {
      x: {
        field: 'day',
        type: 'temporal',
        timeUnit: 'utcyearmonthdate',
        axis: { title: null, format: '%-d %b', labelOverlap: true },
      },
      y: { field: 'count', type: 'quantitative', title: 'Alarms a day' },
      tooltip: [
        { field: 'day', type: 'temporal', timeUnit: 'utcyearmonthdate', title: 'Day', format: '%a %-d %b' },
        { field: 'count', type: 'quantitative', title: 'Alarms' },
      ],
    },
    config: chartConfig(look),
  } as TopLevelSpec;
}

/** Lost minutes week by week. */
export function weeksChart({ weeks }: PlantChartData, look: Look): TopLevelSpec {
  const { fill, names } = bucketScale(look);
  const values = weeks
    .filter(({ bucket }) => bucket !== 'planned')
    .map((week) => ({ ...week, bucket: names(week.bucket) }));
  return {
    width: look.widthPx,
    height: 170,
    data: { values },
    mark: { type: 'bar', strokeWidth: 1.4, width: { band: 0.6 } },
    encoding: {
      x: {
        field: 'week',
        type: 'ordinal',
        sort: 'ascending',
        axis: { title: null, labelAngle: 0, labelOverlap: true },
      },
      y: { field: 'minutes', type: 'quantitative', title: 'Lost, minutes', stack: true },
      fill: {
        field: 'bucket',
        type: 'nominal',
        scale: fill,
        legend: { title: null, columns: look.widthPx < 500 ? 1 : 3, labelLimit: 300 },
      },
      stroke: { value: look.ink },
      tooltip: [
        { field: 'week', type: 'nominal', title: 'Week' },
        { field: 'bucket', type: 'nominal', title: 'Kind' },
        { field: 'minutes', type: 'quantitative', title: 'Minutes', format: '.0f' },
      ],
    },
    config: chartConfig(look),
  } as TopLevelSpec;
}
