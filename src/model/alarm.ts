import type { Cause } from './cause.js';

/** What an alarm is about, whatever words the log uses for it. */
export type AlarmKind =
  | 'sensor-open'
  | 'sensor-fault'
  | 'temperature-high'
  | 'temperature-low'
  | 'deviation-high'
  | 'deviation-low'
  | 'heater'
  | 'communication'
  | 'machine-stop'
  | 'other';

/** What an alarm says beside its times. */
export interface AlarmSubject {
  readonly source: string;
  readonly message: string;
  readonly kind: AlarmKind;
  /** Zone index, or null when the alarm is not about one zone. */
  readonly zone: number | null;
  /** Machine name, or null when not known. */
  readonly machine: string | null;
  /** As written in the log, or null. */
  readonly priority: string | null;
}

/** One alarm from activation to return, times in UTC ms. */
export interface AlarmSpan extends AlarmSubject {
  readonly startMs: number;
  /** NaN = still standing at the end of the log. */
  readonly endMs: number;
  /** NaN = never acknowledged, or not logged. */
  readonly acknowledgedMs: number;
}

/** One line of the maintenance list. */
export interface MaintenanceEntry {
  readonly timeMs: number;
  /** Zone index, or null when the line names none that the logs have. */
  readonly zone: number | null;
  /** As written. */
  readonly zoneText: string;
  readonly done: string;
  readonly found: string;
  /** What was put right, as far as the words tell. */
  readonly cause: Cause | null;
  readonly isReplacement: boolean;
  /** Its words speak of a wash-down, or of cleaning with water. */
  readonly isWashDown?: boolean;
}

/** A production stop from a stop list; stops can also be told from running state and alarms. */
export interface StopEntry {
  readonly startMs: number;
  readonly endMs: number;
  readonly machine: string | null;
  /** Index of the zone that its reason names as what failed; null = none. */
  readonly zone: number | null;
  readonly reason: string;
  readonly isPlanned: boolean;
  /** Its reason speaks of a wash-down, or of cleaning. */
  readonly isWashDown?: boolean;
}
