/** Where a stopped minute went; every stopped minute is in exactly one of these. */
export type DowntimeBucket = 'zone-fault' | 'other-cause' | 'unknown' | 'planned';

export interface DowntimeRow {
  readonly name: string;
  readonly bucket: DowntimeBucket;
  readonly machine: string | null;
  readonly minutes: number;
  readonly stops: number;
  readonly longestMinutes: number;
  readonly cost: number | null;
  /** Only restarts after a zone's fault; absent elsewhere. */
  readonly isRestart?: boolean;
}

export interface ReliabilityRow {
  readonly name: string;
  readonly operatingHours: number;
  readonly failures: number;
  /** Hours; null when there was no failure. */
  readonly mtbfHours: number | null;
  /** Chi-square limits, NIST/SEMATECH e-Handbook 8.4.5.1. */
  readonly mtbfLowHours: number | null;
  readonly mtbfHighHours: number | null;
  readonly mttrMinutes: number | null;
  readonly availability: number | null;
}

export interface DowntimeFindings {
  /** From what the stops were told: running state, alarms, a stop list; empty when nothing tells. */
  readonly from: readonly ('running' | 'alarms' | 'stop list')[];
  readonly stoppedMinutes: number;
  readonly plannedMinutes: number;
  readonly zoneFaultMinutes: number;
  readonly otherMinutes: number;
  /** Part of `otherMinutes`: zone gone well, machine not yet running again. Absent in older findings. */
  readonly restartMinutes?: number;
  readonly unknownMinutes: number;
  readonly currency: string | null;
  readonly cost: number | null;
  readonly byZone: readonly DowntimeRow[];
  readonly byMachine: readonly DowntimeRow[];
  readonly byWeek: readonly DowntimeRow[];
  /** Days of the plant's clock, so that runs that overlap can be told apart in a history. */
  readonly byDay?: readonly {
    readonly day: string;
    readonly zoneFaultMinutes: number;
    readonly otherMinutes: number;
    readonly unknownMinutes: number;
  }[];
  /** All unplanned buckets, largest first. */
  readonly pareto: readonly DowntimeRow[];
  readonly reliability: readonly ReliabilityRow[];
  readonly notes: readonly string[];
}
