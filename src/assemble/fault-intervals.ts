import { opensOf } from '../detect/shared/opens.js';
import type { Evidence } from '../model/detector.js';
import type { Interval } from '../maths/intervals.js';

/** By zone index: spans in which the input had no sensor to read, from log and alarms together. */
export function faultIntervals(evidence: Evidence): readonly (readonly Interval[])[] {
  return opensOf(evidence).map((opens) =>
    opens.map(({ startMs, endMs }) => ({ start: startMs, end: Math.max(endMs, startMs + 1000) })),
  );
}
