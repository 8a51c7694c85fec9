import { tickCount, timeLabel, type Look } from './look.js';

/** The time axis of the trace's panels; the page moves `fromMs` and `toMs`. */
export function timeAxis(look: Look, withLabels: boolean) {
  return {
    field: 't',
    type: 'temporal',
    scale: { type: 'utc', domainMin: { expr: 'fromMs' }, domainMax: { expr: 'toMs' }, nice: false },
    axis: withLabels
      ? { title: null, tickCount: tickCount(look), labelOverlap: true, labelExpr: timeLabel }
      : { title: null, labels: false, ticks: false, tickCount: tickCount(look) },
  };
}

/** The same for bars with a beginning and an end. */
export function spanX(look: Look) {
  const { axis, ...x } = timeAxis(look, true);
  return { x: { ...x, axis, field: 'from' }, x2: { field: 'to' } };
}
