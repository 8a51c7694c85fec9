/** Alarm measures by ISA-18.2 / IEC 62682 / EEMUA 191; definitions and thresholds in src/alarms. */
export interface AlarmCount {
  readonly name: string;
  readonly count: number;
  /** 0 to 1 of all activations. */
  readonly share: number;
  readonly minutesInAlarm: number;
  /** Beside a zone's name, since two machines may have a zone of one name. */
  readonly machine?: string;
}

/** A machine whose own alarm clock is off while the plant's as a whole is not, and what was added to its alarms. */
export interface MachineClockShift {
  readonly machine: string;
  readonly shiftSeconds: number;
}

export interface AlarmFindings {
  readonly hasLog: boolean;
  readonly activations: number;
  readonly hoursCovered: number;
  readonly perTenMinutesMean: number;
  readonly perTenMinutesPeak: number;
  readonly perHourMean: number;
  readonly perDayMean: number;
  readonly medianSecondsToAcknowledge: number | null;
  readonly medianSecondsToClear: number | null;
  readonly floods: readonly {
    readonly start: string;
    readonly end: string;
    readonly count: number;
    readonly peakPerTenMinutes: number;
  }[];
  readonly shareOfTimeInFlood: number;
  readonly chattering: readonly AlarmCount[];
  readonly fleeting: readonly AlarmCount[];
  readonly stale: readonly {
    readonly name: string;
    readonly since: string;
    /** Until it was gone, or until the end of the log. */
    readonly hours: number;
    /** True when it still stood at the end of the log; absent in findings of earlier versions. */
    readonly isActive?: boolean;
  }[];
  readonly mostFrequent: readonly AlarmCount[];
  readonly byZone: readonly AlarmCount[];
  readonly byMachine: readonly AlarmCount[];
  readonly byPriority: readonly AlarmCount[];
  readonly byShift: readonly AlarmCount[];
  readonly byDay: readonly { readonly day: string; readonly count: number }[];
  /** What repairing zones would remove: zones in order, share of all activations removed by the first n. */
  readonly removable: readonly {
    readonly zone: string;
    /** Absent in findings of earlier versions, here and below. */
    readonly machine?: string;
    readonly count: number;
    readonly cumulativeShare: number;
  }[];
  readonly contradictions: readonly {
    readonly zone: string;
    readonly machine?: string;
    readonly what: 'alarm-without-sign' | 'sign-without-alarm';
    readonly count: number;
    readonly says: string;
  }[];
  /** Seconds to add to the alarm clock to match the temperature log; null = could not be told. */
  readonly clockShiftSeconds: number | null;
  /** Machines with a clock of their own; absent in findings of earlier versions. */
  readonly clockShiftsByMachine?: readonly MachineClockShift[];
  readonly thresholds: Readonly<Record<string, number>>;
}
