import type { Cause } from './cause.js';

export type ChangeSinceLast = 'new' | 'worse' | 'better' | 'fixed' | 'still open' | 'unchanged';

/** How this week's findings stand beside the weeks before. */
export interface HistoryFindings {
  /** Runs kept, this one counted. */
  readonly runs: number;
  readonly previousEnd: string | null;
  /** Two machines may have a zone of one name, so each is named with its machine; absent in older findings. */
  readonly changes: readonly {
    readonly zone: string;
    readonly machine?: string;
    readonly change: ChangeSinceLast;
    readonly says: string;
  }[];
  /** Per zone: cold-soak offset over all weeks kept. */
  readonly offsets: readonly {
    readonly zone: string;
    readonly machine?: string;
    readonly points: readonly { readonly time: string; readonly offsetDegC: number }[];
  }[];
  readonly weeks: readonly {
    readonly week: string;
    /** Days of the week that the runs cover; absent in older findings. */
    readonly coveredDays?: number;
    readonly alarms: number;
    readonly zoneFaultMinutes: number;
    /** Other causes that are known. */
    readonly otherMinutes: number;
    /** Absent in older findings, where it is part of `otherMinutes`. */
    readonly unknownMinutes?: number;
    /** Zones with a fault in that week, as the last run over it tells; null where none covers it. */
    readonly zonesFaulty: number | null;
  }[];
  /** Absent in older findings. */
  readonly levelChanges?: readonly LevelChange[];
}

/** A measure of the plant that has stood at another level for some weeks. */
export interface LevelChange {
  readonly measure: 'alarms' | 'zoneFaultMinutes';
  readonly isHigher: boolean;
  /** First week of the new level, as likely as the weeks tell. */
  readonly sinceWeek: string;
  /** Medians. */
  readonly perWeekBefore: number;
  readonly perWeekSince: number;
  /** Weeks in which chance alone gives one such change, in mean. */
  readonly byChanceInWeeks: number;
}

/** What the plant's own record made of the shares of causes among faults. */
export interface RecordShares {
  /** Findings that the fitted shares are worth. */
  readonly priorFindings: number;
  /** Zones at which no fault was found; they count for the track record only. */
  readonly nothingFoundCount: number;
  readonly byCause: readonly {
    readonly cause: Cause;
    /** Share among faults, 0 to 1, as fitted. */
    readonly fittedShare: number;
    readonly foundCount: number;
    /** Share among faults that the weighing used. */
    readonly usedShare: number;
    /** True where plant.yaml gives the share; then the record changes nothing. */
    readonly isSetByPlant: boolean;
  }[];
}

/** How often earlier verdicts proved right, by what maintenance found. */
export interface TrackRecord {
  readonly confirmed: number;
  readonly right: number;
  readonly byCause: readonly {
    readonly cause: string;
    readonly said: number;
    readonly right: number;
    readonly low: number;
    readonly high: number;
  }[];
}
