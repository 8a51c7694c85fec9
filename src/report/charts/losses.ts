import type { TopLevelSpec } from 'vega-lite';
import type { PlantChartData } from '../embed/chart-data.js';
import { hoursText } from '../text/numbers.js';
import { lossKinds, lossWords, type LossKind } from '../text/words.js';
import { weekText } from '../text/weeks.js';
import { chartConfig, type Look } from './look.js';

/** More bars than this are not read; the table beside the chart has them all. */
const mostBars = 12;

/** Filled, striped by its outline, or hollow: a kind can be told without its colour. */
function kindScale(look: Look, shown: readonly LossKind[]) {
  const kinds = lossKinds.filter((kind) => shown.includes(kind));
  const range: Readonly<Record<LossKind, string>> = {
    'zone-fault': look.fault,
    restart: look.alarm,
    'other-cause': look.running,
    unknown: look.paper,
  };
  return { domain: kinds.map((kind) => lossWords[kind]), range: kinds.map((kind) => range[kind]) };
}

function kindLegend(look: Look) {
  return { title: null, columns: look.widthPx < 500 ? 1 : 4, labelLimit: 300 };
}

/** Lost time by cause, largest first, with the running share of the whole. */
export function paretoChart({ pareto }: PlantChartData, look: Look): TopLevelSpec {
  const total = pareto.reduce((sum, { minutes }) => sum + minutes, 0);
  let sofar = 0;
  const values = pareto.slice(0, mostBars).map(({ name, kind, minutes }, order) => {
    sofar += minutes;
    const share = total > 0 ? (100 * sofar) / total : 0;
    const label = `${hoursText(minutes)}, ${Math.round(share)} %`;
    return { order, name, kind: lossWords[kind], hours: minutes / 60, label, share };
  });
  const largest = values.reduce((most, { hours }) => Math.max(most, hours), 0);
  const isNarrow = look.widthPx < narrowPx;
  // Two machines may have a cause of one name, so a bar is its place in the order; its name is written beside it.
  const y = {
    field: 'order',
    type: 'ordinal',
    scale: { paddingInner: 0.25 },
    axis: isNarrow ? null : nameAxis(values, look),
  };
  const encoding = { y, x: { field: 'hours', type: 'quantitative' } };
  const kinds = pareto.slice(0, mostBars).map(({ kind }) => kind);
  return {
    // Names beside the bars take their place from them.
    width: isNarrow ? look.widthPx + 40 : look.widthPx * 0.75,
    height: { step: isNarrow ? 44 : 30 },
    data: { values },
    layer: [
      {
        mark: { type: 'bar', strokeWidth: 1.4, ...(isNarrow ? { height: 18, yOffset: 9 } : {}) },
        encoding: {
          y,
          x: {
            field: 'hours',
            type: 'quantitative',
            title: 'Lost, hours',
            // Room behind the longest bar for its words.
            scale: { domainMax: largest * (isNarrow ? 1.6 : 1.25) },
            axis: { tickCount: isNarrow ? 4 : 8 },
          },
          fill: { field: 'kind', type: 'nominal', scale: kindScale(look, kinds), legend: kindLegend(look) },
          stroke: { value: look.ink },
          tooltip: [
            { field: 'name', type: 'nominal', title: 'Cause' },
            { field: 'kind', type: 'nominal', title: 'Kind' },
            { field: 'hours', type: 'quantitative', title: 'Hours', format: '.2f' },
            { field: 'share', type: 'quantitative', title: 'With those above, %', format: '.0f' },
          ],
        },
      },
      {
        mark: { type: 'text', align: 'left', dx: 5, dy: isNarrow ? 9 : 0, fontSize: 12 },
        encoding: { ...encoding, text: { field: 'label', type: 'nominal' } },
      },
      ...(isNarrow ? [nameLayer(y, look)] : []),
    ],
    config: chartConfig(look),
  } as TopLevelSpec;
}

/** Below this the names stand above their bars. */
const narrowPx = 500;

function nameAxis(values: readonly { readonly name: string }[], look: Look) {
  const names = values.map(({ name }) => name);
  return { title: null, labelLimit: look.widthPx * 0.3, labelExpr: `${JSON.stringify(names)}[datum.value]` };
}

function nameLayer(y: object, look: Look) {
  return {
    mark: { type: 'text', align: 'left', dx: 2, dy: -10, fontSize: 12, limit: look.widthPx + 30 },
    encoding: { y, x: { value: 0 }, text: { field: 'name', type: 'nominal' } },
  };
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

/** Lost time week by week, zone faults at the foot, where they can be compared. */
export function weeksChart({ weeks }: PlantChartData, look: Look): TopLevelSpec {
  const values = weeks.map(({ week, kind, minutes }) => ({
    week: weekText(week),
    start: week,
    kind: lossWords[kind],
    order: lossKinds.indexOf(kind),
    hours: minutes / 60,
  }));
  return {
    width: look.widthPx,
    height: 190,
    data: { values },
    mark: { type: 'bar', strokeWidth: 1.4, width: { band: Math.min(0.6, values.length / 12 + 0.2) } },
    encoding: {
      x: {
        field: 'week',
        type: 'ordinal',
        sort: { field: 'start' },
        axis: { title: null, labelAngle: 0, labelOverlap: true, labelExpr: "split(datum.label, ', ')" },
      },
      y: { field: 'hours', type: 'quantitative', title: 'Lost, hours', stack: true },
      order: { field: 'order', type: 'quantitative' },
      fill: {
        field: 'kind',
        type: 'nominal',
        scale: kindScale(
          look,
          weeks.map(({ kind }) => kind),
        ),
        legend: kindLegend(look),
      },
      stroke: { value: look.ink },
      tooltip: [
        { field: 'week', type: 'nominal', title: 'Week' },
        { field: 'kind', type: 'nominal', title: 'Kind' },
        { field: 'hours', type: 'quantitative', title: 'Hours', format: '.2f' },
      ],
    },
    config: chartConfig(look),
  } as TopLevelSpec;
}
