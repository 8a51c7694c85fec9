import type { TopLevelSpec } from 'vega-lite';
import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackMarks } from '../embed/pack-lists.js';
import { chartConfig, unitText, type Look } from './look.js';
import { stripPanel, stripSpans, type MarkedSpan } from './strips.js';
import { spanX, timeAxis } from './time-axis.js';
import { tracePoints, type TracePoint } from './trace-points.js';

/** More lines than this would push the trace off the screen; further faults share them. */
const mostFaultLines = 5;
const faultLinePx = 20;
const panelHeightPx = { temperature: 230, output: 64 } as const;

/**
 * A zone's trace: reading band with set point, faults marked and numbered, output below, and strips that say when the
 * machine ran, alarms stood and no temperature was there. The page moves `fromMs` and `toMs` to zoom.
 */
export function traceChart(data: ZoneChartData, look: Look): TopLevelSpec {
  const points = data.trace ? tracePoints(data.trace, look) : [];
  const hasOutput = points.some(({ output }) => output !== null);
  const hasSetpoint = points.some(({ setpoint }) => setpoint !== null);
  const spans = stripSpans(data, points);
  return {
    params: [
      { name: 'fromMs', value: data.startMs },
      { name: 'toMs', value: data.endMs },
    ],
    data: { name: 'trace', values: points as TracePoint[] },
    spacing: 10,
    vconcat: [
      ...(data.faults.length > 0 ? [faultPanel(data, look)] : []),
      temperaturePanel(data, look, spans, hasSetpoint),
      ...(hasOutput ? [outputPanel(look)] : []),
      ...(spans.length > 0 ? [stripPanel(look, spans)] : []),
    ],
    resolve: { scale: { x: 'independent' } },
    config: { ...chartConfig(look), concat: { spacing: 10 } },
  } as TopLevelSpec;
}

function temperaturePanel(data: ZoneChartData, look: Look, spans: readonly MarkedSpan[], hasSetpoint: boolean) {
  const running = spans.filter(({ what }) => what === 'Running');
  const x = timeAxis(look, true);
  return {
    width: look.widthPx,
    height: panelHeightPx.temperature,
    layer: [
      ...(running.length > 0
        ? [
            {
              data: { values: running },
              mark: { type: 'rect', color: look.running, opacity: 0.16, clip: true },
              encoding: spanX(look),
            },
          ]
        : []),
      ...(data.faults.length > 0 ? [faultRules(data, look)] : []),
      {
        mark: { type: 'area', color: look.reading, opacity: 0.85, stroke: look.reading, strokeWidth: 1.2, clip: true },
        encoding: {
          x,
          y: { field: 'low', type: 'quantitative', scale: { zero: false }, title: `Reading, ${unitText(look)}` },
          y2: { field: 'high' },
        },
      },
      ...(hasSetpoint ? [setpointLayer(look, x)] : []),
      ...repairLayers(data, look),
      hoverLayer(look, x),
    ],
  };
}

function setpointLayer(look: Look, x: object) {
  const mark = {
    type: 'line',
    interpolate: 'step-after',
    color: look.setpoint,
    strokeDash: [6, 3],
    strokeWidth: 1.6,
    clip: true,
  };
  return { mark, encoding: { x, y: { field: 'setpoint', type: 'quantitative' } } };
}

/** Nearest bucket under the pointer: a rule, and its numbers as a tip. */
function hoverLayer(look: Look, x: object) {
  return {
    params: [
      {
        name: 'near',
        select: { type: 'point', on: 'pointermove', nearest: true, encodings: ['x'], clear: 'pointerout' },
      },
      {
        name: 'pick',
        select: {
          type: 'interval',
          encodings: ['x'],
          mark: { fill: look.fault, fillOpacity: 0.15, stroke: look.fault },
        },
      },
    ],
    mark: { type: 'rule', color: look.ink, clip: true },
    encoding: {
      x,
      opacity: { condition: { param: 'near', empty: false, value: 0.7 }, value: 0 },
      tooltip: [
        { field: 't', type: 'temporal', title: 'Time', format: '%a %-d %b %H:%M' },
        { field: 'low', type: 'quantitative', title: `Lowest, ${unitText(look)}`, format: '.1f' },
        { field: 'high', type: 'quantitative', title: `Highest, ${unitText(look)}`, format: '.1f' },
        { field: 'setpoint', type: 'quantitative', title: `Set point, ${unitText(look)}`, format: '.1f' },
        { field: 'output', type: 'quantitative', title: 'Output, %', format: '.0f' },
        { field: 'bad', type: 'quantitative', title: 'Samples without a temperature', format: 'd' },
      ],
    },
  };
}

/** A rule through the trace where each fault begins. */
function faultRules({ faults }: ZoneChartData, look: Look) {
  const values = faults.map(({ fromMs }) => ({ from: fromMs }));
  const mark = { type: 'rule', color: look.fault, strokeWidth: 1.2, strokeDash: [2, 2], clip: true };
  return { data: { values }, mark, encoding: { x: spanX(look).x } };
}

/** Numbers at the edge stay whole, so those out of sight are made invisible instead of cut. */
const inSight = { condition: { test: 'datum.from >= fromMs && datum.from <= toMs', value: 1 }, value: 0 };

/** Each fault with its number and a bar from its beginning to its end, a line of its own for each of the first few. */
function faultPanel({ faults }: ZoneChartData, look: Look) {
  const lines = Math.min(mostFaultLines, faults.length);
  const values = faults.map(({ number, fromMs, toMs, says, saysInF }) => ({
    number,
    from: fromMs,
    to: toMs,
    says: look.unit === 'degF' ? saysInF : says,
    line: (number - 1) % lines,
  }));
  const hidden = { title: null, labels: false, ticks: false, domain: false, grid: false };
  const y = { field: 'line', type: 'ordinal', axis: hidden };
  const x = { ...spanX(look).x, axis: hidden };
  const tooltip = [
    { field: 'number', type: 'quantitative', title: 'Fault', format: 'd' },
    { field: 'from', type: 'temporal', title: 'From', format: '%a %-d %b %H:%M' },
    { field: 'to', type: 'temporal', title: 'To', format: '%a %-d %b %H:%M' },
    { field: 'says', type: 'nominal', title: 'What' },
  ];
  return {
    width: look.widthPx,
    height: lines * faultLinePx,
    data: { values },
    view: { stroke: null },
    layer: [
      {
        mark: { type: 'rule', color: look.fault, strokeWidth: 4, strokeCap: 'round', clip: true },
        encoding: { x, x2: { field: 'to' }, y, tooltip },
      },
      {
        mark: { type: 'point', shape: 'circle', filled: true, size: 240, color: look.fault },
        encoding: { x, y, opacity: inSight, tooltip },
      },
      {
        mark: { type: 'text', fontSize: 11, fontWeight: 700, color: look.paper },
        encoding: { x, y, opacity: inSight, text: { field: 'number', type: 'quantitative' }, tooltip },
      },
    ],
  };
}

function repairLayers({ repairs }: ZoneChartData, look: Look) {
  if (repairs.length === 0) return [];
  const values = unpackMarks(repairs).map(({ fromMs, says }) => ({ from: fromMs, says }));
  return [
    {
      data: { values },
      mark: { type: 'point', shape: 'diamond', filled: true, size: 110, color: look.ink, clip: true },
      encoding: {
        x: spanX(look).x,
        y: { value: panelHeightPx.temperature - 8 },
        tooltip: [
          { field: 'from', type: 'temporal', title: 'Repair', format: '%a %-d %b %H:%M' },
          { field: 'says', type: 'nominal', title: 'Done' },
        ],
      },
    },
  ];
}

function outputPanel(look: Look) {
  return {
    width: look.widthPx,
    height: panelHeightPx.output,
    mark: {
      type: 'area',
      interpolate: 'step-after',
      color: look.output,
      opacity: 0.6,
      line: { color: look.output, strokeWidth: 1 },
      clip: true,
    },
    encoding: {
      x: timeAxis(look, false),
      y: {
        field: 'output',
        type: 'quantitative',
        scale: { domain: [0, 100] },
        axis: { title: 'Output, %', values: [0, 50, 100] },
      },
    },
  };
}
