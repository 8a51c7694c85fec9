/** What one row of an alarm log says, as a small number. */
export const alarmRowState = {
  /** The whole alarm in one row: start, and end where it is known. */
  span: 0,
  active: 1,
  acknowledged: 2,
  cleared: 3,
  /** A row that says that something happened, without a state and without an end. */
  plain: 4,
} as const;

export type AlarmRowState = (typeof alarmRowState)[keyof typeof alarmRowState];

/** All that an alarm row says besides times, as written; '' = the log has no such column or the cell is empty. */
export interface AlarmLabel {
  readonly source: string;
  readonly zone: string;
  readonly machine: string;
  readonly code: string;
  /** State words taken out; numbers with decimals replaced by #, so that the rows of one alarm share one text. */
  readonly message: string;
  readonly priority: string;
}

/**
 * Rows of alarm logs in the order read, as columns: a million rows take some 30 MB. Arrays may be longer than
 * `length`. Times in UTC ms, NaN = not said.
 */
export interface AlarmRows {
  readonly length: number;
  readonly startMs: Float64Array;
  readonly endMs: Float64Array;
  readonly acknowledgedMs: Float64Array;
  readonly state: Uint8Array;
  /** Index into `labels`. */
  readonly label: Uint32Array;
  /** Index of the file the row came from. */
  readonly file: Uint16Array;
  readonly labels: readonly AlarmLabel[];
}

/** One line of a maintenance list, as written. */
export interface MaintenanceRow {
  readonly timeMs: number;
  readonly zone: string;
  readonly machine: string;
  readonly done: string;
  readonly found: string;
}

/** One line of a stop list, as written. */
export interface StopRow {
  readonly startMs: number;
  readonly endMs: number;
  readonly machine: string;
  readonly reason: string;
  readonly planned: string;
}
