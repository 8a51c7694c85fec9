import type { ZoneChartData } from '../embed/chart-data.js';
import { unpackMarks } from '../embed/pack-lists.js';
import { tickCount, type Look } from './look.js';
import { spanX } from './time-axis.js';
import type { TracePoint } from './trace-points.js';

export interface MarkedSpan {
  readonly from: number;
  readonly to: number;
  readonly what: string;
  readonly says: string;
}

const stripHeightPx = 18;

/** Stretches in which the machine ran, an alarm stood, or no temperature was there. */
export function stripSpans(data: ZoneChartData, points: readonly TracePoint[]): readonly MarkedSpan[] {
  const bucketMs = points.length > 1 ? points[1]!.t - points[0]!.t : 60_000;
  const stretches = (what: string, says: string, holds: (point: TracePoint) => boolean): MarkedSpan[] => {
    const spans: MarkedSpan[] = [];
    let from = NaN;
    for (const point of points) {
      if (holds(point) && Number.isNaN(from)) from = point.t;
      if (!holds(point) && !Number.isNaN(from)) {
        spans.push({ from, to: point.t, what, says });
        from = NaN;
      }
    }
    if (!Number.isNaN(from)) spans.push({ from, to: points.at(-1)!.t + bucketMs, what, says });
    return spans;
  };
  return [
    ...stretches('Running', 'machine runs', ({ running }) => running !== null && running >= 0.5),
    ...unpackMarks(data.singles).map(({ fromMs, toMs, says }) => ({ from: fromMs, to: toMs, what: 'Fault', says })),
    ...unpackMarks(data.alarms).map(({ fromMs, toMs, says }) => ({ from: fromMs, to: toMs, what: 'Alarm', says })),
    ...stretches('No reading', 'samples without a temperature', ({ bad, low }) => bad > 0 || low === null),
  ];
}

/** One line for each kind of stretch below the trace. */
export function stripPanel(look: Look, spans: readonly MarkedSpan[]) {
  const kinds = ['Running', 'Fault', 'Alarm', 'No reading'].filter((kind) => spans.some(({ what }) => what === kind));
  const colours = { Running: look.running, Fault: look.fault, Alarm: look.alarm, 'No reading': look.ink } as Readonly<
    Record<string, string>
  >;
  return {
    width: look.widthPx,
    height: stripHeightPx * kinds.length,
    data: { values: spans },
    mark: { type: 'rect', clip: true, strokeWidth: 1 },
    encoding: {
      ...spanX(look),
      x: { ...spanX(look).x, axis: { title: null, labels: false, ticks: false, tickCount: tickCount(look) } },
      y: { field: 'what', type: 'nominal', sort: kinds, axis: { title: null, domain: false, ticks: false } },
      color: {
        field: 'what',
        type: 'nominal',
        scale: { domain: kinds, range: kinds.map((kind) => colours[kind]) },
        legend: null,
      },
      stroke: {
        field: 'what',
        type: 'nominal',
        scale: { domain: kinds, range: kinds.map((kind) => colours[kind]) },
        legend: null,
      },
      tooltip: [
        { field: 'what', type: 'nominal', title: 'What' },
        { field: 'says', type: 'nominal', title: 'Says' },
        { field: 'from', type: 'temporal', title: 'From', format: '%a %-d %b %H:%M:%S' },
        { field: 'to', type: 'temporal', title: 'To', format: '%a %-d %b %H:%M:%S' },
      ],
    },
  };
}
