import { opensOf } from '../detect/shared/opens/opens.js';
import type { Evidence } from '../model/detector.js';
import type { Interval } from '../maths/intervals.js';

/**
 * By zone index: spans in which the readings themselves show that the input had no sensor to read. What only the alarm
 * log says is left out, so that the two can be held against each other.
 */
export function faultIntervals(evidence: Evidence): readonly (readonly Interval[])[] {
  return opensOf(evidence).map((opens) =>
    opens
      .filter(({ isInLog }) => isInLog)
      .map(({ startMs, endMs }) => ({ start: startMs, end: Math.max(endMs, startMs + 1000) })),
  );
}
