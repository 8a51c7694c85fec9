import type { MachineClockShift } from './alarm-findings.js';
import type { Evidence } from './detector.js';
import type { SourceNote } from './findings.js';
import type { ProblemNote } from './problem.js';

/** Everything the logs hold, as the detectors see it, and what was said of the files on the way. */
export interface Gathered {
  readonly evidence: Evidence;
  /** Seconds added to the alarm clock to match the temperature log; null = it could not be told. */
  readonly clockShiftSeconds: number | null;
  readonly clockShiftsByMachine: readonly MachineClockShift[];
  readonly sources: readonly SourceNote[];
  readonly problems: readonly ProblemNote[];
  readonly assumptions: readonly string[];
  /** Of the log's clock; null = not stated. */
  readonly timezone: string | null;
}
