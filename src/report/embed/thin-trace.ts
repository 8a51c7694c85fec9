import type { Trace } from '../../model/findings.js';

/**
 * Draws neighbouring places of a trace together. The lowest and the highest reading are kept, so no extreme is lost;
 * output and running share are means, the set point is the last one, bad samples are summed.
 *
 * @param most Largest number of places, 1 or more; a trace that has no more comes back as it is.
 */
export function thinTrace(trace: Trace, most: number): Trace {
  const each = Math.ceil(trace.timeMs.length / most);
  if (each <= 1) return trace;
  const groups = <T>(column: readonly T[]): T[][] =>
    Array.from({ length: Math.ceil(column.length / each) }, (_, i) => column.slice(i * each, (i + 1) * each));
  const byGroup = (column: readonly (number | null)[], of: (values: readonly number[]) => number): (number | null)[] =>
    groups(column).map((group) => {
      const known = group.filter((value) => value !== null);
      return known.length === 0 ? null : of(known);
    });
  return {
    timeMs: groups(trace.timeMs).map((group) => group[0]!),
    minDegC: byGroup(trace.minDegC, (values) => Math.min(...values)),
    maxDegC: byGroup(trace.maxDegC, (values) => Math.max(...values)),
    setpointDegC: byGroup(trace.setpointDegC, (values) => values.at(-1)!),
    outputPercent: byGroup(trace.outputPercent, mean),
    runningShare: byGroup(trace.runningShare, mean),
    ...(trace.badCount ? { badCount: groups(trace.badCount).map((group) => group.reduce((a, b) => a + b, 0)) } : {}),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
