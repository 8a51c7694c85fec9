import type { PackedTrace } from '../embed/chart-data.js';
import { unpackColumn } from '../embed/pack.js';
import { inUnit, type Look } from './look.js';

/** One bucket of the trace as the chart uses it: temperatures in the reader's unit. */
export interface TracePoint {
  readonly t: number;
  readonly low: number | null;
  readonly high: number | null;
  readonly setpoint: number | null;
  readonly output: number | null;
  readonly running: number | null;
  readonly bad: number;
}

/** The packed columns as points; two decimals are kept. */
export function tracePoints(trace: PackedTrace, look: Look): readonly TracePoint[] {
  const column = (name: Exclude<keyof PackedTrace, 'length'>): readonly (number | null)[] =>
    unpackColumn(trace[name], trace.length);
  const [time, low, high] = [column('timeMs'), column('lowDegC'), column('highDegC')];
  const [setpoint, output, running, bad] = [
    column('setpointDegC'),
    column('outputPercent'),
    column('runningShare'),
    column('badCount'),
  ];
  return Array.from({ length: trace.length }, (_, i) => ({
    t: time[i] ?? NaN,
    low: inUnit(low[i] ?? null, 'level', look),
    high: inUnit(high[i] ?? null, 'level', look),
    setpoint: inUnit(setpoint[i] || null, 'level', look), // 0 °C is how controllers log "off"
    output: output[i] ?? null,
    running: running[i] ?? null,
    bad: bad[i] ?? 0,
  }));
}
